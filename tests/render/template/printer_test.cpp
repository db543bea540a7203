// A printer that stretches one axis and shrinks the other, and the profile that undoes it.

#include <catch2/catch.hpp>

#include "tests/oracle/joined_sheets.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;

namespace {

// On a rectangle of 7 x 9 in this printer gives 7.02 x 8.98 in; both diagonals are then
// sqrt(7.02^2 + 8.98^2) = 11.3984 in (Pythagoras).
const std::string profile =
    "<printer version=\"1\" name=\"Shop laser\" unit=\"in\" across=\"7\" down=\"9\">"
    "<measured across=\"7.02\" down=\"8.98\" falling=\"11.3984\" rising=\"11.3984\"/></printer>";

void print(oracle::Spot& spot) {
  spot.x *= 7.02 / 7;
  spot.y *= 8.98 / 9;
}

std::vector<oracle::DrawnPage> printed(const std::string& pdf) {
  std::vector<oracle::DrawnPage> pages = oracle::drawn_pages(pdf);
  for (oracle::DrawnPage& page : pages) {
    for (oracle::Stroke& stroke : page.strokes) {
      print(stroke.from);
      print(stroke.to);
    }
  }
  return pages;
}

}  // namespace

TEST_CASE("a printer that stretches the sheets gives a true board once it has a profile") {
  const std::string folder = oracle::scratch_folder("template-printer");
  oracle::write_file(folder + "/printer.xml", profile);
  const std::string job = oracle::gallery("title-and-three.xml");
  const MatLayer layer = mat_of(job).layers.at(0);
  const auto with = oracle::join_sheets(printed(template_of(
      job, folder + "/with.pdf", {"--paper", "letter", "--printer", folder + "/printer.xml"})));
  REQUIRE(with.size() == 1);
  CHECK(with[0].worst_mark < hundredth_mm);
  CHECK(missing_lines(with[0].whole, layer) == "");
  const auto without = oracle::join_sheets(
      printed(template_of(job, folder + "/without.pdf", {"--paper", "letter"})));
  CHECK_THROWS_AS(missing_lines(without.at(0).whole, layer), std::runtime_error);
}
