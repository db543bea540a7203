#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "tests/bench/grid_job.h"
#include "tests/engine/layout/jobs.h"

using namespace mullion;
using namespace test;

namespace {

bool is_whole(Length length, Length step) {
  return length.ticks() % step.ticks() == 0;
}

}  // namespace

TEST_CASE("an inner edge that finds no place on the rule keeps no other edge off it") {
  const Layout layout = laid_out(R"(
    <layers><layer board="Oat"/></layers>
    <arrange><column gap="26" align="left">
      <opening id="upper" width="313.2" height="251.2"/>
      <row gap="44">
        <opening id="stated" width="263.2" height="161.2"/>
        <opening id="free" width="105.2" height="free"/>
      </row></column></arrange>)",
                                 R"(unit="mm" increment="1")");
  const Length step = millimetres(1);
  CHECK(is_whole(layout.width, step));
  CHECK(is_whole(layout.height, step));
  CHECK(is_whole(layout.borders.left, step));
  CHECK(is_whole(layout.borders.top, step));
  CHECK(is_whole(layout.openings[2].rect.height(), step));
  CHECK(is_whole(layout.openings[2].rect.top, step));
}

TEST_CASE("borders and the outer size close to the tick where a size has no whole number of them") {
  const Layout layout = laid_out(R"(
    <layers><layer board="Oat"/></layers><borders top="3"/>
    <arrange><opening id="a" width="139/16" height="111/64"/></arrange>
    <rules><multiple measure="border.left" of="a.height" times="1/7"/></rules>)");
  const Rect& opening = layout.openings.front().rect;
  CHECK(layout.borders.left == opening.left);
  CHECK(layout.borders.left + opening.width() + layout.borders.right == layout.width);
  CHECK(layout.borders.top + opening.height() + layout.borders.bottom == layout.height);
}

TEST_CASE("a part that is narrower than its column leaves it to another to fill it") {
  const Layout layout = laid_out(R"(
    <layers><layer board="Oat"/></layers>
    <outer width="30"/><borders left="3" right="3"/>
    <arrange><column gap="1">
      <row><opening id="a" width="4" height="4"/><opening id="b" width="4" height="4"/></row>
      <opening id="c" width="10" height="2"/></column></arrange>)");
  CHECK(layout.openings[0].rect.left == inches(3));
  CHECK(layout.openings[1].rect.right == inches(27));
  CHECK(layout.openings[2].rect.left == inches(10));
}

TEST_CASE("a note tells of an outer size and of edges between two steps of the rule") {
  const std::string notes = notes_of(R"(
    <layers><layer board="Oat"/></layers><borders all="2"/>
    <arrange><row gap="1">
      <opening id="a" width="4 49/64" height="4"/>
      <opening id="b" width="5" height="4"/>
      <opening id="c" width="5" height="4"/></row></arrange>)");
  CHECK(notes ==
        "the outer width is 20 49/64 in, between two steps of the rule\n"
        "the left edges of openings \"b\" and \"c\" lie between two steps of the rule\n");
}

TEST_CASE("what is off by the same amount for the same reason is told once") {
  const std::string notes = notes_of(R"(
    <layers><layer board="Oat"/></layers>
    <outer width="20" height="10"/><borders left="2" right="2 1/16"/>
    <arrange><row>
      <opening id="a" width="4" height="4"/><opening id="b" width="4" height="4"/>
      <opening id="c" width="4" height="4"/></row></arrange>)");
  CHECK(notes ==
        "equal gaps: off by 1/32 in, since the sizes do not divide into whole steps of 1/16 in\n");
}

TEST_CASE("where many parts are out of line, six are named and the others are counted") {
  std::string row;
  for (int i = 0; i < 9; ++i) {
    const std::string id = std::to_string(i);
    row += "<opening id=\"o" + id + "\" width=\"2\" height=\"" + (i == 0 ? "4" : "3 1/16") + "\"/>";
  }
  const std::string lines =
      "<layers><layer board=\"Oat\"/></layers><arrange><row gap=\"1\">" + row + "</row></arrange>";
  const Layout layout = laid_out(lines);
  REQUIRE(layout.notes.size() == 7);
  CHECK(std::get<OffBy>(layout.notes[5]).what.part.id == "o6");
  CHECK(std::get<OutOfLine>(layout.notes[6]).parts == 2);
  CHECK(std::get<OutOfLine>(layout.notes[6]).most == sixty_fourths(4));
  CHECK(notes_of(lines).ends_with(
      "in their rows and columns 2 more parts are out of line, by 1/16 in at most\n"));
}

TEST_CASE("a layout says whether its sizes on the increment are proved the nearest") {
  const auto of = [](const std::string& width) {
    return laid_out("<layers><layer board=\"Oat\"/></layers><outer width=\"" + width +
                    "\" height=\"12\"/><arrange><opening width=\"4\" height=\"4\"/></arrange>")
        .on_increment;
  };
  CHECK(of("12") == OnIncrement::as_it_was);
  CHECK(of("12 1/16") == OnIncrement::nearest);  // two borders share 8 1/16 in
  Job tight = parse_job(bench::grid_job(100), "grid.xml").value();
  const Layout free = lay_out(tight).value();
  tight.outer_width = free.width - sixty_fourths(20);
  tight.outer_height = free.height - sixty_fourths(28);
  tight.borders.least = inches(3);
  CHECK(lay_out(tight).value().on_increment == OnIncrement::near);
}
