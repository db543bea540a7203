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

// A slant is believed where each length was measured twice.
std::string twice(double across, double down, double falling, double rising) {
  std::ostringstream text;
  text.precision(12);
  text << "<measured across=\"" << across << "\" down=\"" << down << "\" falling=\"" << falling
       << "\" rising=\"" << rising << "\"/>";
  return text.str() + text.str();
}

// The sides and diagonals of a rectangle of 7 x 9 in as it prints them (Pythagoras).
std::string slanted_profile() {
  const double aside = slant * 9;
  std::ostringstream text;
  text.precision(12);
  text << "<printer version=\"1\" name=\"Slanting\" unit=\"in\" across=\"7\" down=\"9\">"
       << twice(7, std::hypot(9, aside), std::hypot(7 + aside, 9), std::hypot(7 - aside, 9))
       << "</printer>";
  return text.str();
}

// A driver brings a page that is wider than high onto upright paper by a quarter turn, clockwise
// (1) or the other way (-1), and one that is as high as a roll of 24 in is wide onto the roll; or
// has paper so wide that it turns none (0). Places are told as the page lies when it is read.
std::vector<oracle::DrawnPage> printed(const std::string& pdf, const Print& print, int way = 1) {
  std::vector<oracle::DrawnPage> pages = oracle::drawn_pages(pdf);
  for (oracle::DrawnPage& page : pages) {
    const double roll = 24 * 72;
    const bool on_roll = std::abs(page.width - roll) < 0.01,
               across_roll = std::abs(page.height - roll) < 0.01;
    const bool turned = way != 0 && !on_roll && (across_roll || page.width > page.height);
    const auto on_paper = [&](oracle::Spot spot) {
      if (!turned) return print(spot);
      const oracle::Spot there = print({-way * spot.y, way * spot.x});
      return oracle::Spot{way * there.y, -way * there.x};
    };
    for (oracle::Stroke& stroke : page.strokes) {
      stroke.from = on_paper(stroke.from);
      stroke.to = on_paper(stroke.to);
    }
  }
  return pages;
}

// x 0.994, y 1.003, and down the page to the right by 2 in 1000.
oracle::Spot bad(oracle::Spot spot) {
  return {spot.x * 0.994 + spot.y * 1.003 * 0.002, spot.y * 1.003 * std::sqrt(1 - 0.002 * 0.002)};
}

// What is measured of the rectangle of 7 x 9 in (Pythagoras).
std::string bad_profile() {
  const oracle::Spot right = bad({7, 0}), down = bad({0, 9});
  std::ostringstream text;
  text.precision(12);
  text << "<printer version=\"1\" name=\"Bad\" unit=\"in\" across=\"7\" down=\"9\">"
       << twice(right.x, std::hypot(down.x, down.y), std::hypot(right.x + down.x, down.y),
                std::hypot(right.x - down.x, down.y))
       << "</printer>";
  return text.str();
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
  const auto with = printed(template_of(job, folder + "/with.pdf", words), slanted, 0);
  CHECK(missing_lines(with.at(0), layer) == "");
  const auto without = printed(template_of(job, folder + "/without.pdf"), slanted, 0);
  CHECK_THROWS_AS(missing_lines(without.at(0), layer), std::runtime_error);
  const auto sheets = oracle::join_sheets(
      printed(template_of(job, folder + "/sheets.pdf",
                          {"--paper", "letter", "--printer", folder + "/printer.xml"}),
              slanted));
  REQUIRE(sheets.size() == 1);
  CHECK(sheets[0].worst_mark < hundredth_mm);
  CHECK(missing_lines(sheets[0].whole, layer) == "");
}

TEST_CASE("sheets that lie across come out true whichever way the driver turns them") {
  const std::string folder = oracle::scratch_folder("template-turned");
  oracle::write_file(folder + "/printer.xml", bad_profile());
  int across = 0, upright = 0;
  for (const char* paper : {"letter", "a3", "24in"}) {
    for (const char* name : {"title-and-three.xml", "engraved-house.xml"}) {
      const std::string job = oracle::gallery(name);
      const Mat mat = made::mat_of(job);
      const Cuts cuts = cuts_of(mat);
      const std::string pdf =
          template_of(job, folder + "/sheets.pdf",
                      {"--paper", paper, "--layer", "1", "--printer", folder + "/printer.xml"});
      const oracle::DrawnPage last = oracle::drawn_pages(pdf).back();
      ++(last.width > last.height ? across : upright);
      for (const int way : {1, -1}) {
        INFO(name << " on " << paper << ", turned " << way);
        const auto sheets = oracle::join_sheets(printed(pdf, bad, way));
        REQUIRE(sheets.size() == 1);
        CHECK(sheets[0].worst_mark < hundredth_mm);
        CHECK(missing_lines(sheets[0].whole, cuts.layers.at(0)) == "");
      }
    }
  }
  CHECK(across > 0);
  CHECK(upright > 0);
}

TEST_CASE("a page of the board's size says which printer it is for, and how it was corrected") {
  const std::string folder = oracle::scratch_folder("template-corrected");
  oracle::write_file(folder + "/printer.xml", profile);
  const auto text_of = [&](const std::vector<std::string>& words) {
    return oracle::text_of(oracle::drawn_pages(template_of(oracle::gallery("title-and-three.xml"),
                                                           folder + "/page.pdf", words))
                               .at(0));
  };
  // 7 / 7.02 = 0.99715, 9 / 8.98 = 1.00223.
  CHECK(text_of({"--printer", folder + "/printer.xml"})
            .find("Corrected for the printer Shop laser: across -0.28 %, down +0.22 %") !=
        std::string::npos);
  CHECK(text_of({}).find("Corrected") == std::string::npos);
}
