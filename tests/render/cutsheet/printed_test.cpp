// The simulator plays the sheet as it is printed.

#include <catch2/catch.hpp>
#include <regex>

#include "engine/job/read.h"
#include "printed_job.h"
#include "tests/how_many.h"

using namespace mullion;

TEST_CASE("the sheet of every gallery job gives its mats when it is played as it is printed") {
  const int jobs = printed::each_gallery_plan([](const printed::GalleryPlan& one) {
    const printed::Sheet sheet(one.mat, one.plan);
    INFO(one.name);
    for (unsigned lie = 0; lie < 4; ++lie) CHECK(sheet.outcome(lie * 0x55555555u) == "");
  });
  CHECK(jobs > 25);
}

TEST_CASE("random mats and jobs come out as they were meant when their sheets are played") {
  const int count = test::how_many(24, 2400);
  const int played = printed::each_random_plan(417, count, [](const printed::RandomPlan& one) {
    INFO(one.name);
    CHECK(printed::Sheet(one.mat, one.plan).outcome(one.lie) == "");
  });
  CHECK(played > count * 4 / 5);
}

namespace {

// Asymmetric, so that no fault is hidden by a likeness of edges or openings.
constexpr const char* two_openings =
    R"(<job version="1" reference="F-2" unit="in" increment="1/16"><layers>
    <layer name="Top mat" board="Oat"/><layer name="Under-mat" board="Slate" reveal="1/4"/></layers>
    <borders left="2 1/2" top="3" right="3 1/4" bottom="4"/><arrange><row gap="1 1/4">
    <opening id="a" width="5" height="7"/><opening id="b" width="4" height="7"/>
    </row></arrange></job>)";
constexpr const char* shapes =
    R"(<job version="1" reference="F-3" unit="mm" increment="1"><layers>
    <layer name="Top mat" board="Oat"/><layer name="Lift" board="Foam" spacer="yes"/>
    <layer name="Under-mat" board="Slate" reveal="6"/></layers>
    <borders left="60" top="70" right="80" bottom="95"/><arrange><row gap="31">
    <opening id="a" width="150" height="200" shape="ellipse"/>
    <opening id="b" width="130" height="180" shape="octagon" corner="35"/>
    <opening id="c" width="110" height="190"/>
    </row></arrange></job>)";

struct Faulty {
  std::string name;
  Mat mat;
  CuttingPlan plan;
};

Faulty faulty(const char* xml, CutterProfile cutter, std::optional<Way> way) {
  const Job job = parse_job(xml, "faulty.xml").value();
  Faulty out{way ? word_of(*way) : "", build_mat(job, lay_out(job).value()).value(), {}};
  PlanOptions options;
  options.way = way;
  out.plan = plan_cutting(out.mat, cutter, options).value();
  return out;
}

// One fault in the words of one label.
struct Fault {
  std::string was, becomes;
  std::size_t page = 0, label = 0;
};

class Seeds {
 public:
  explicit Seeds(const std::vector<oracle::DrawnPage>& pages) : pages_(pages) {
    for (page_ = 0; page_ < pages.size(); ++page_) {
      for (label_ = 0; label_ < pages[page_].labels.size(); ++label_) sow();
    }
  }
  const std::vector<Fault>& faults() const { return faults_; }

 private:
  void sow() {
    const std::string& text = pages_[page_].labels[label_].text;
    if (is_for_information(text)) return;
    static const std::regex length("((?:[0-9]+ )?[0-9]+/[0-9]+ in|[0-9]+ in|[0-9.]+ mm)");
    at_each(length, [](const std::string& was) {
      const Unit unit = was.back() == 'n' ? Unit::inch : Unit::millimetre;
      const Length more = unit == Unit::inch ? sixty_fourths(8) : millimetres(3);
      return format_exact(parse_length(was, unit).value() + more, unit);
    });
    static const std::regex letter("[Ee]dges? [A-D](?![a-z])| from [A-D]\\b|, [A-D] at the guide");
    at_each(letter, [](std::string was) {
      char& at = was[was.find_last_of("ABCD", was.find(" at ") - 1)];
      at = "BCDA"[at - 'A'];
      return was;
    });
    for (const auto& [was, becomes] : std::initializer_list<std::pair<const char*, const char*>>{
             {"half turn", "as it lies"},
             {"as it lies", "half turn"},
             {"quarter turn to the right", "quarter turn to the left"},
             {"quarter turn to the left", "quarter turn to the right"},
             {" past ", " short of "},
             {" short of ", " past "},
             {"pulled toward", "pushed away from"},
             {"pushed away from", "pulled toward"},
             {"opened by", "closed by"},
             {"closed by", "opened by"},
             {"away from the guide's", "toward the guide's"},
             {"toward the guide's", "away from the guide's"},
             {"near stop", "far stop"},
             {"start at cut", "end at cut"},
             {"end at the line", "start at the line"},
             {"onto the line", "1/4 in past the line"}}) {
      at_each(std::regex(was), [&](const std::string&) { return becomes; });
    }
    if (std::regex_search(text, std::regex("^[0-9]+  "))) {
      at_each(std::regex("(left|right|top|bottom)(?! mat)"), [](const std::string& was) {
        return was == "left" ? "right" : was == "right" ? "left" : was == "top" ? "bottom" : "top";
      });
      at_each(std::regex("opening [12]"), [](const std::string& was) {
        return was == "opening 1" ? "opening 2" : "opening 1";
      });
      at_each(std::regex("at cut [0-9]+"), [](const std::string&) { return "at cut 99"; });
    }
    // In a picture.
    if (std::regex_match(text, std::regex("[A-D]"))) {
      at_each(std::regex("."),
              [](const std::string& was) { return std::string(1, "BCDA"[was[0] - 'A']); });
    }
  }

  // What is cut does not depend on it.
  bool is_for_information(const std::string& text) const {
    static const std::regex head(
        "^1 mat, .*|.*(two stops|Next best|likely|neither quicker).*|^! .*|.*letter .*|^[0-9.]+ mm "
        "off.*|.*template's line.*|^Spacers from scrap.*");
    return std::regex_match(text, head) && text.find("Red:") == std::string::npos &&
           text.find("Spacers from scrap") == std::string::npos;
  }

  template <class Change>
  void at_each(const std::regex& what, const Change& change) {
    const std::string& text = pages_[page_].labels[label_].text;
    for (std::sregex_iterator at(text.begin(), text.end(), what), end; at != end; ++at) {
      const std::string becomes = change(at->str());
      const auto from = static_cast<std::size_t>(at->position());
      std::string bent = text;
      bent.replace(from, at->str().size(), becomes);
      faults_.push_back({text, bent, page_, label_});
    }
  }

  const std::vector<oracle::DrawnPage>& pages_;
  std::vector<Fault> faults_;
  std::size_t page_ = 0, label_ = 0;
};

}  // namespace

TEST_CASE("a fault in anything that a sheet prints is found when it is played") {
  CutterProfile rail = default_cutter();
  rail.line_from_rail = sixty_fourths(12);
  CutterProfile pushed = default_cutter();
  pushed.stroke = Stroke::push;
  CutterProfile one_stop = default_cutter();
  one_stop.far_stop.reset();
  one_stop.own_start_lead = sixty_fourths(8);
  std::vector<Faulty> sheets;
  for (const Way way : all_ways) sheets.push_back(faulty(two_openings, rail, way));
  sheets.push_back(faulty(two_openings, *generic_cutter("plain-bench"), std::nullopt));
  sheets.push_back(faulty(two_openings, pushed, std::nullopt));
  sheets.push_back(faulty(two_openings, one_stop, std::nullopt));
  sheets.push_back(faulty(shapes, *generic_cutter("metric-bench"), std::nullopt));
  const auto stride = static_cast<std::size_t>(test::how_many(37, 1));
  std::size_t turn = 0, placed = 0;
  for (const Faulty& one : sheets) {
    const printed::Sheet sheet(one.mat, one.plan);
    INFO(one.name);
    REQUIRE(sheet.outcome(0) == "");
    const Seeds seeds(sheet.pages);
    for (const Fault& fault : seeds.faults()) {
      if (turn++ % stride != 0) continue;
      ++placed;
      std::vector<oracle::DrawnPage> bent = sheet.pages;
      bent[fault.page].labels[fault.label].text = fault.becomes;
      INFO(fault.was << " -> " << fault.becomes);
      bool found = false;
      try {
        for (unsigned lie = 0; lie < 4 && !found; ++lie) found = sheet.outcome(bent, lie) != "";
      } catch (const std::exception&) {
        found = true;  // it cannot even be read
      }
      CHECK(found);
    }
  }
  CHECK(placed > 40);
}
