// Printers that stretch, shrink or slant the page, and the profiles that undo it.

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <sstream>

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

// What a printer makes of a place on the page.
using Print = std::function<oracle::Spot(oracle::Spot)>;

oracle::Spot stretched(oracle::Spot spot) {
  return {spot.x * 7.02 / 7, spot.y * 8.98 / 9};
}

// A printer whose paper runs through at a slant: down the page by 9 in, it prints 0.036 in to the
// right. Its sides across are true.
constexpr double slant = 0.036 / 9;

oracle::Spot slanted(oracle::Spot spot) {
  return {spot.x + slant * spot.y, spot.y};
}

// The sides and diagonals of a rectangle of 7 x 9 in as it prints them (Pythagoras).
std::string slanted_profile() {
  const double aside = slant * 9;
  std::ostringstream text;
  text.precision(12);
  text << "<printer version=\"1\" name=\"Slanting\" unit=\"in\" across=\"7\" down=\"9\">"
       << "<measured across=\"7\" down=\"" << std::hypot(9, aside) << "\" falling=\""
       << std::hypot(7 + aside, 9) << "\" rising=\"" << std::hypot(7 - aside, 9)
       << "\"/></printer>";
  return text.str();
}

std::vector<oracle::DrawnPage> printed(const std::string& pdf, const Print& print) {
  std::vector<oracle::DrawnPage> pages = oracle::drawn_pages(pdf);
  for (oracle::DrawnPage& page : pages) {
    for (oracle::Stroke& stroke : page.strokes) {
      stroke.from = print(stroke.from);
      stroke.to = print(stroke.to);
    }
  }
  return pages;
}

}  // namespace

TEST_CASE("a printer that stretches the sheets gives a true board once it has a profile") {
  const std::string folder = oracle::scratch_folder("template-printer");
  oracle::write_file(folder + "/printer.xml", profile);
  const std::string job = oracle::gallery("title-and-three.xml");
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const BoardCuts& layer = cuts.layers.at(0);
  const auto with = oracle::join_sheets(
      printed(template_of(job, folder + "/with.pdf",
                          {"--paper", "letter", "--printer", folder + "/printer.xml"}),
              stretched));
  REQUIRE(with.size() == 1);
  CHECK(with[0].worst_mark < hundredth_mm);
  CHECK(missing_lines(with[0].whole, layer) == "");
  const auto without = oracle::join_sheets(
      printed(template_of(job, folder + "/without.pdf", {"--paper", "letter"}), stretched));
  CHECK_THROWS_AS(missing_lines(without.at(0).whole, layer), std::runtime_error);
}

TEST_CASE("a printer that slants gives a square board once it has a profile") {
  const std::string folder = oracle::scratch_folder("template-slant");
  oracle::write_file(folder + "/printer.xml", slanted_profile());
  const std::string job = oracle::gallery("title-and-three.xml");
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const BoardCuts& layer = cuts.layers.at(0);
  const std::vector<std::string> words{"--printer", folder + "/printer.xml"};
  const auto with = printed(template_of(job, folder + "/with.pdf", words), slanted);
  CHECK(missing_lines(with.at(0), layer) == "");
  const auto without = printed(template_of(job, folder + "/without.pdf"), slanted);
  CHECK_THROWS_AS(missing_lines(without.at(0), layer), std::runtime_error);
  const auto sheets = oracle::join_sheets(
      printed(template_of(job, folder + "/sheets.pdf",
                          {"--paper", "letter", "--printer", folder + "/printer.xml"}),
              slanted));
  REQUIRE(sheets.size() == 1);
  CHECK(sheets[0].worst_mark < hundredth_mm);
  CHECK(missing_lines(sheets[0].whole, layer) == "");
}
