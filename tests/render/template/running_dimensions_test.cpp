// Running dimensions as they are read in a PDF.

#include "render/template/running_dimensions.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "render/paper/document.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"

using namespace mullion;
using oracle::DrawnPage;
using oracle::Spot;

namespace {

// Marks at these ticks from the left edge of a board, labelled above it to 1/16 in.
DrawnPage dimensions_at(const std::vector<std::int64_t>& ticks) {
  std::vector<DimensionMark> marks;
  for (const std::int64_t at : ticks) {
    const Length distance = Length::from_ticks(at);
    marks.push_back({distance, paper::points(distance)});
  }
  paper::Drawing drawing;
  draw_running_dimensions(drawing, marks, DimensionSide::above, 200, 0, 600, 8,
                          {Unit::inch, sixty_fourths(4)});
  const std::string path = oracle::scratch_folder("dimensions") + "/dimensions.pdf";
  oracle::write_file(
      path, paper::write_pdf({{{inches(10), inches(10)}, "", drawing}}, {"Dimensions", ""}));
  return oracle::drawn_pages(path).at(0);
}

// The outer ends of leaders, farthest from the board's edge at 200 pt.
std::vector<Spot> leader_ends(const DrawnPage& page) {
  std::vector<Spot> ends;
  for (const oracle::Stroke& stroke : page.strokes) {
    const Spot end = stroke.from.y < stroke.to.y ? stroke.from : stroke.to;
    if (end.y < 200 - 10) ends.push_back(end);
  }
  return ends;
}

}  // namespace

TEST_CASE("marks whose labels would say the same share one") {
  // 4 in and 3 or 9 ticks: both about 4 in, at the finest of 1/64 in.
  const std::int64_t four_inches = 4 * 40640;
  const DrawnPage page = dimensions_at({2 * 40640, four_inches + 3, four_inches + 9, 6 * 40640});
  INFO(oracle::text_of(page));
  CHECK(page.labels.size() == 3);
  const std::vector<Spot> ends = leader_ends(page);
  REQUIRE(ends.size() == 4);
  CHECK(ends[1].x == Approx(ends[2].x).margin(0.001));
  CHECK(std::abs(ends[0].x - ends[1].x) > 72);
  CHECK(std::abs(ends[3].x - ends[2].x) > 72);
}

TEST_CASE("a place that a rule tells exactly and one that it cannot tell from it share a label") {
  const DrawnPage page = dimensions_at({4 * 40640, 4 * 40640 + 3, 6 * 40640});
  REQUIRE(page.labels.size() == 2);
  CHECK(page.labels[0].text ==
        "\xE2\x89\x88"
        "4");
  CHECK(page.labels[1].text == "6");
}

TEST_CASE("marks at different lengths have labels of their own, apart from one another") {
  const DrawnPage page = dimensions_at({4 * 40640, 4 * 40640 + 40640 / 16});
  REQUIRE(page.labels.size() == 2);
  CHECK(page.labels[0].text == "4");
  CHECK(page.labels[1].text == "4 1/16");
  CHECK(page.labels[1].at.x - page.labels[0].at.x >= 8);
}
