#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/engine/layout/jobs.h"

using namespace mullion;
using namespace test;

namespace {

const std::string two_pictures = R"(
  <pictures>
    <picture id="a" width="9 3/4" height="6"/>
    <picture id="b" width="9 3/4" height="8"/>
  </pictures>
  <layers><layer board="Oat"/></layers>)";

Length gap_between(const Layout& layout, std::size_t left, std::size_t right) {
  return layout.openings[right].rect.left - layout.openings[left].rect.right;
}

}  // namespace

TEST_CASE("openings in a row stand a gap apart and the outer width is the sum of the parts") {
  const Layout layout = laid_out(two_pictures + R"(
    <borders all="3"/>
    <arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(gap_between(layout, 0, 1) == inches(1));
  CHECK(layout.width == inches(3 + 1 + 3) + sixty_fourths(2 * (9 * 64 + 32)));
  CHECK(layout.height == inches(6) + sixty_fourths(7 * 64 + 48));
}

TEST_CASE("parts of a row are centred, or aligned as the row says") {
  const auto tops = [](const std::string& align) {
    const Layout layout =
        laid_out(two_pictures + R"(<borders all="3"/><arrange><row gap="1" )" + align +
                 R"(><opening picture="a"/><opening picture="b"/></row></arrange>)");
    return layout.openings[0].rect.top - layout.openings[1].rect.top;
  };
  CHECK(tops("") == inches(1));
  CHECK(tops(R"(align="top")") == Length());
  CHECK(tops(R"(align="bottom")") == inches(2));
}

TEST_CASE("sizes that do not fit are told as a sum, and what would fit is said") {
  const std::string told = conflict_of(two_pictures + R"(
    <outer width="24" height="20"/><borders left="3" right="3"/>
    <arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(told.find("borders 3 + 3, two openings of 9 1/2 and a gap of 1 need 26 in; the outer width "
                  "is 24 in: 2 in short") != std::string::npos);
  CHECK(told.find("an outer width of 26 in or left and right borders of 2 in would fit") !=
        std::string::npos);
}

TEST_CASE("everything stated and too much room is told as well") {
  const std::string told = conflict_of(two_pictures + R"(
    <outer width="28" height="20"/><borders left="3" right="3"/>
    <arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(told.find("come to 26 in; the outer width is 28 in: 2 in too much") != std::string::npos);
  CHECK(told.find("a gap of 3 in") != std::string::npos);
}

TEST_CASE("a gap that is free in a row of stated gaps takes what the others leave") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="38" height="20"/><borders left="3" right="3"/>
    <arrange><row gap="1"><opening picture="a"/><opening id="c" width="2" height="2"/>
      <gap size="free"/><opening picture="b"/></row></arrange>)");
  CHECK(gap_between(layout, 0, 1) == inches(1));
  CHECK(gap_between(layout, 1, 2) == inches(38 - 3 - 3 - 1 - 2) - sixty_fourths(2 * (9 * 64 + 32)));
}

TEST_CASE("a free gap takes what outer size and borders leave") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="30" height="20"/><borders left="3" right="3"/>
    <arrange><row><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(gap_between(layout, 0, 1) == inches(5));
}

TEST_CASE("a free opening takes what outer size, borders and gaps leave") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="30" height="20"/><borders left="3" right="3"/>
    <arrange><row gap="1"><opening picture="a"/><opening id="free" width="free" height="4"/></row></arrange>)");
  CHECK(layout.openings[1].rect.width() == inches(30 - 7) - sixty_fourths(9 * 64 + 32));
}

TEST_CASE("a column of rows nests in a row") {
  const Layout layout = laid_out(R"(
    <pictures>
      <picture id="a" width="4" height="4" overlap="0"/><picture id="b" width="4" height="4" overlap="0"/>
      <picture id="c" width="4" height="4" overlap="0"/><picture id="d" width="6" height="9" overlap="0"/>
    </pictures>
    <layers><layer board="Oat"/></layers>
    <borders all="2"/>
    <arrange>
      <row gap="1">
        <column gap="1"><row gap="1"><opening picture="a"/><opening picture="b"/></row><opening picture="c"/></column>
        <opening picture="d"/>
      </row>
    </arrange>)");
  CHECK(layout.width == inches(2 + 4 + 1 + 4 + 1 + 6 + 2));
  CHECK(layout.height == inches(2 + 9 + 2));
  CHECK(layout.openings[2].rect ==
        Rect{sixty_fourths(288), inches(7), sixty_fourths(544), inches(11)});
}

TEST_CASE("rules say what rows and columns cannot") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="30" height="20"/>
    <arrange><row><opening picture="a"/><gap id="g"/><opening picture="b"/></row></arrange>
    <rules>
      <fixed measure="a.left" length="2"/>
      <multiple measure="border.right" of="g" times="2"/>
      <align of="a b" edge="bottom"/>
    </rules>)");
  CHECK(layout.openings[0].rect.left == inches(2));
  CHECK(layout.borders.right == gap_between(layout, 0, 1) * 2);
  CHECK(layout.openings[0].rect.bottom == layout.openings[1].rect.bottom);
}

TEST_CASE("the parts along every line add up when the halves are no whole sixteenths") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="30 1/16" height="20 1/16"/>
    <arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(layout.borders.left + layout.borders.right + inches(20) == sixty_fourths(30 * 64 + 4));
  CHECK(layout.borders.left.ticks() % sixty_fourths(4).ticks() == 0);
  CHECK(layout.borders.right.ticks() % sixty_fourths(4).ticks() == 0);
  REQUIRE_FALSE(layout.notes.empty());
  CHECK(std::get<OffBy>(layout.notes[0]).amount == sixty_fourths(4));
}

TEST_CASE("a column that cannot be as wide as outer size and borders ask is a conflict") {
  const std::string told = conflict_of(two_pictures + R"(
    <outer width="24"/><borders left="3" right="3"/>
    <arrange><column gap="1"><opening picture="a"/><opening picture="b"/></column></arrange>)");
  CHECK(told.find(
            "borders 3 + 3 and an opening of 9 1/2 come to 15 1/2 in; the outer width is 24 in: "
            "8 1/2 in too much") != std::string::npos);
}

TEST_CASE("a free gap within a column's row opens until the column fills its place") {
  const Layout layout = laid_out(two_pictures + R"(
    <outer width="30"/><borders left="3" right="3"/>
    <arrange><column gap="1"><row><opening picture="a"/><opening picture="b"/></row>
      <opening id="c" width="5" height="2"/></column></arrange>)");
  CHECK(gap_between(layout, 0, 1) == inches(5));
}

TEST_CASE("a note names the opening that cannot stand in the middle of its column") {
  const std::string notes = notes_of(R"(
    <pictures><picture id="a" width="5" height="4"/><picture id="b" width="4 1/16" height="4"/></pictures>
    <layers><layer board="Oat"/></layers>
    <arrange><column gap="1"><opening picture="a"/><opening id="narrow" picture="b"/></column></arrange>)");
  CHECK(std::count(notes.begin(), notes.end(), '\n') == 1);
  CHECK(notes.find("the two sides of opening \"narrow\" in its column: off by 1/16 in") == 0);
}
