#include "tests/engine/layout/wild_job.h"

#include <array>
#include <sstream>
#include <vector>

#include "tests/engine/layout/jobs.h"

namespace test {
namespace {

// The steps of an increment, and how many of them make about a sixteenth of an inch.
struct Rule {
  const char* unit;
  const char* increment;
  double step;
  int fine;
};
constexpr std::array<Rule, 5> rules_of_the_trade{{{"in", "1/16", 1.0 / 16, 1},
                                                  {"in", "1/32", 1.0 / 32, 2},
                                                  {"in", "1/64", 1.0 / 64, 4},
                                                  {"mm", "1", 1, 2},
                                                  {"mm", "0.5", 0.5, 3}}};

class Writer {
 public:
  Writer(std::mt19937& random, int openings, bool on_the_rule)
      : random_(random), openings_(openings), on_the_rule_(on_the_rule), rule_(pick_rule()) {}

  WildJob write() {
    const std::string arrangement = node(openings_, 0, chance(2), 0);
    std::ostringstream out;
    out << "<pictures>" << pictures_.str() << "</pictures>\n" << layers() << outer_or_frame();
    out << borders() << "<arrange";
    if (chance(4)) out << " least-bar=\"" << size(4, 14) << '"';
    out << '>' << arrangement << "</arrange>\n" << rules();
    return {std::string("unit=\"") + rule_.unit + "\" increment=\"" + rule_.increment + '"',
            out.str(), on_the_rule_};
  }

 private:
  const Rule& pick_rule() { return rules_of_the_trade[static_cast<std::size_t>(pick(5))]; }
  int pick(int choices) { return std::uniform_int_distribution<int>(0, choices - 1)(random_); }
  bool chance(int of) { return pick(of) == 0; }
  int between(int from, int to) { return from + pick(to - from + 1); }

  // A length of about so many sixteenths of an inch; at times in the other unit or between steps.
  std::string size(int from, int to) {
    const int steps = between(from, to) * rule_.fine;
    const bool inch = std::string(rule_.unit) == "in";
    if (!on_the_rule_ && chance(6)) {
      return inch ? std::to_string(steps * 2) + " mm" : std::to_string(steps) + "/16 in";
    }
    if (!on_the_rule_ && chance(6)) {
      return inch ? std::to_string(steps) + "/64" : std::to_string(steps) + ".3";
    }
    std::ostringstream out;
    if (inch) {
      out << steps << "/" << static_cast<int>(1 / rule_.step);
    } else {
      out << steps * rule_.step;
    }
    return out.str();
  }

  std::string node(int count, int first, bool row, int depth) {
    if (count == 1) return opening(first);
    std::ostringstream out;
    out << (row ? "<row" : "<column");
    groups_.push_back("r" + std::to_string(groups_.size()));
    out << " id=\"" << groups_.back() << '"';
    if (chance(2)) out << " gap=\"" << size(8, 24) << '"';
    const char* aligns[2][4] = {{"left", "centre", "right", "stretch"},
                                {"top", "centre", "bottom", "stretch"}};
    out << " align=\"" << aligns[row ? 1 : 0][pick(4)] << "\">";
    for (int placed = 0; placed < count;) {
      const int part = placed == 0 ? between(1, count - 1) : between(1, count - placed);
      if (placed > 0 && chance(3)) out << gap();
      out << node(part, first + placed, !row, depth + 1);
      placed += part;
    }
    out << (row ? "</row>" : "</column>");
    return out.str();
  }

  std::string gap() {
    gaps_.push_back("g" + std::to_string(gaps_.size()));
    std::string out = "<gap id=\"" + gaps_.back() + '"';
    if (chance(3)) out += " size=\"" + size(8, 24) + '"';
    return out + "/>";
  }

  std::string opening(int number) {
    const std::string id = "p" + std::to_string(number);
    if (chance(8)) {
      const auto side = [&] { return chance(2) ? std::string("free") : size(16, 80); };
      return "<opening id=\"" + id + "\" width=\"" + side() + "\" height=\"" + side() + "\"/>";
    }
    pictures_ << "<picture id=\"" << id << "\" width=\"" << size(48, 160) << "\" height=\""
              << size(48, 160) << '"';
    if (chance(6)) {
      pictures_ << " float=\"" << size(2, 6) << '"';
    } else {
      pictures_ << " overlap=\"" << size(1, 3) << '"';
    }
    pictures_ << "/>";
    return "<opening id=\"" + id + "\" picture=\"" + id + "\"/>";
  }

  // The mat's windows follow from lines on the boards' backs: bevels would add their run.
  std::string layers() {
    std::string out = "<layers";
    out += on_the_rule_ || chance(2) ? " reveal-is=\"lines\">" : ">";
    out += "<layer board=\"Oat\"/>";
    if (chance(2)) out += "<layer board=\"Ink\" reveal=\"" + size(2, 6) + "\"/>";
    if (chance(4)) out += "<layer board=\"Clay\" reveal=\"" + size(2, 6) + "\"/>";
    return out + "</layers>\n";
  }

  std::string outer_or_frame() {
    const int width = 120 + 110 * openings_, height = 120 + 90 * openings_;
    switch (pick(6)) {
      case 0:
        return "<outer width=\"" + size(width / 2, width) + "\"/>\n";
      case 1:
        return "<outer width=\"" + size(width / 2, width) + "\" height=\"" +
               size(height / 2, height) + "\"/>\n";
      case 2:
        return "<frame rabbet-width=\"" + size(width / 2, width) + "\" rabbet-height=\"" +
               size(height / 2, height) + "\" allowance=\"" + size(1, 3) + "\"/>\n";
      default:
        return {};
    }
  }

  std::string borders() {
    switch (pick(7)) {
      case 0:
        return {};
      case 1:
        return "<borders all=\"" + size(32, 64) + "\"/>\n";
      case 2:
        return "<borders least=\"" + size(16, 48) + "\"/>\n";
      case 3:
        return "<borders bottom-extra=\"" + size(4, 16) + "\"/>\n";
      case 4:
        return "<borders sides=\"" + size(32, 64) + "\" least=\"" + size(16, 32) + "\"/>\n";
      case 5:
        return on_the_rule_ ? "" : "<borders bottom=\"optical\"/>\n";
      default:
        return "<borders left=\"" + size(32, 64) + "\"" +
               (on_the_rule_ ? "" : " bottom-ratio=\"5/4\"") + "/>\n";
    }
  }

  std::string measure() {
    const auto any = [&](const std::vector<std::string>& names) {
      return names[static_cast<std::size_t>(pick(static_cast<int>(names.size())))];
    };
    if (!gaps_.empty() && chance(3)) return any(gaps_);
    if (!groups_.empty() && chance(4)) return any(groups_) + (chance(2) ? ".width" : ".height");
    if (chance(4)) return "p" + std::to_string(pick(openings_)) + (chance(2) ? ".left" : ".bottom");
    return any({"border.left", "border.right", "border.top", "border.bottom", "outer.width"});
  }

  std::string any_but(const std::string& name) {
    for (;;) {
      if (const std::string other = measure(); other != name) return other;
    }
  }

  std::string two_measures() {
    const std::string one = measure();
    return one + " " + any_but(one);
  }

  std::string two(const std::string& part = "") {
    const int one = pick(openings_), other = (one + 1 + pick(openings_ - 1)) % openings_;
    return "p" + std::to_string(one) + part + " p" + std::to_string(other) + part;
  }

  std::string rule() {
    switch (pick(openings_ > 1 ? 8 : 4)) {
      case 0:
        return "<at-least measure=\"" + measure() + "\" length=\"" + size(16, 80) + '"';
      case 1:
        return "<at-most measure=\"" + measure() + "\" length=\"" + size(16, 160) + '"';
      case 2:
        return "<fixed measure=\"" + measure() + "\" length=\"" + size(16, 80) + '"';
      case 3:
        return "<multiple measure=\"border.left\" of=\"" + any_but("border.left") + "\" times=\"" +
               (on_the_rule_ ? "2"
                : chance(2)  ? "7/3"
                             : "1/3") +
               '"';
      case 4:
        return "<align of=\"" + two() + "\" edge=\"" + (chance(2) ? "top" : "right") + '"';
      case 5:
        return "<equal of=\"" + two_measures() + '"';
      case 6:
        return "<same-size of=\"" + two() + "\" dimension=\"" + (chance(2) ? "width" : "both") +
               '"';
      default:
        return "<centred what=\"p" + std::to_string(pick(openings_)) + "\" direction=\"" +
               (chance(2) ? "across" : "down") + '"';
    }
  }

  std::string rules() {
    std::string out;
    static const char* const strengths[] = {"strong", "medium", "weak"};
    for (int count = pick(5); count > 0; --count) {
      const std::string said = rule();
      const bool halves = said.starts_with("<centred") || said.starts_with("<multiple");
      const bool may_be_required = !(on_the_rule_ && halves);
      out +=
          "  " + said +
          (may_be_required && chance(4) ? ""
                                        : std::string(" strength=\"") + strengths[pick(3)] + '"') +
          "/>\n";
    }
    return out.empty() ? out : "<rules>\n" + out + "</rules>\n";
  }

  std::mt19937& random_;
  int openings_;
  bool on_the_rule_;
  const Rule& rule_;
  std::ostringstream pictures_;
  std::vector<std::string> groups_, gaps_;
};

}  // namespace

mullion::Job WildJob::job() const {
  return job_of(lines, attributes);
}

WildJob wild_job(std::mt19937& random, int most_openings) {
  const int openings = std::uniform_int_distribution<int>(1, most_openings)(random);
  const bool on_the_rule = std::bernoulli_distribution()(random);
  return Writer(random, openings, on_the_rule).write();
}

}  // namespace test
