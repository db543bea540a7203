#include "tests/engine/layout/random_job.h"

#include <sstream>
#include <vector>

namespace test {
namespace {

class Writer {
 public:
  Writer(std::mt19937& random, int pictures) : random_(random), pictures_(pictures) {}

  std::string write() {
    const std::string arrangement = node(pictures_, 0, pick(2) == 0);
    std::ostringstream out;
    out << "<pictures>\n";
    for (int i = 0; i < pictures_; ++i) {
      out << "<picture id=\"p" << i << "\" width=\"" << sixteenths(48, 160) << "\" height=\""
          << sixteenths(48, 160) << "\"/>\n";
    }
    out << "</pictures>\n<layers><layer board=\"Oat\"/>";
    if (pick(2) == 0) out << "<layer board=\"Ink\" reveal=\"" << sixteenths(2, 6) << "\"/>";
    out << "</layers>\n" << outer() << borders() << "<arrange>" << arrangement << "</arrange>\n";
    if (pictures_ > 1 && pick(3) == 0) out << rules();
    return out.str();
  }

 private:
  int pick(int choices) { return std::uniform_int_distribution<int>(0, choices - 1)(random_); }
  std::string sixteenths(int from, int to) {
    return std::to_string(std::uniform_int_distribution<int>(from, to)(random_)) + "/16";
  }

  std::string node(int count, int first, bool row) {
    if (count == 1) return "<opening picture=\"p" + std::to_string(first) + "\"/>";
    std::string out = row ? "<row" : "<column";
    if (pick(2) == 0) out += " gap=\"" + sixteenths(8, 24) + "\"";
    const char* aligns[2][4] = {{"left", "centre", "right", "stretch"},
                                {"top", "centre", "bottom", "stretch"}};
    out += std::string(" align=\"") + aligns[row ? 1 : 0][pick(4)] + "\">";
    for (int placed = 0; placed < count;) {
      const int part = placed == 0 ? 1 + pick(count - 1) : 1 + pick(count - placed);
      out += node(part, first + placed, !row);
      placed += part;
    }
    return out + (row ? "</row>" : "</column>");
  }

  std::string outer() {
    if (pick(2) == 0) return {};
    return "<outer width=\"" + sixteenths(320, 1200) + "\"" +
           (pick(2) == 0 ? " height=\"" + sixteenths(320, 1200) + "\"" : "") + "/>\n";
  }

  std::string borders() {
    switch (pick(5)) {
      case 0:
        return {};
      case 1:
        return "<borders all=\"" + sixteenths(32, 64) + "\"/>\n";
      case 2:
        return "<borders least=\"" + sixteenths(16, 48) + "\"/>\n";
      case 3:
        return "<borders bottom-extra=\"1/2\"/>\n";
      default:
        return "<borders left=\"" + sixteenths(32, 64) + "\" bottom-ratio=\"5/4\"/>\n";
    }
  }

  std::string rules() {
    static const char* const strengths[] = {"strong", "medium", "weak"};
    return std::string("<rules><at-least measure=\"border.left\" length=\"") + sixteenths(32, 80) +
           "\" strength=\"" + strengths[pick(3)] +
           "\"/><align of=\"p0 p1\" edge=\"top\" strength=\"" + strengths[pick(3)] +
           "\"/></rules>\n";
  }

  std::mt19937& random_;
  int pictures_;
};

}  // namespace

std::string random_job(std::mt19937& random, int most_pictures) {
  const int pictures = std::uniform_int_distribution<int>(1, most_pictures)(random);
  return Writer(random, pictures).write();
}

}  // namespace test
