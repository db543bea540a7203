// What gives way to what: the order that the manual states, one rank against the next.

#include <catch2/catch.hpp>

#include "tests/engine/layout/jobs.h"

using namespace mullion;
using namespace test;

namespace {

// Two openings of 5 x 5 in a row with a free gap between them.
Layout with(const std::string& outer_and_borders, const std::string& rules = "") {
  return laid_out("<layers><layer board=\"Oat\"/></layers>" + outer_and_borders +
                  R"(<arrange><row><opening id="a" width="5" height="5"/><gap id="g"/>
                  <opening id="b" width="5" height="5"/></row></arrange>)" +
                  (rules.empty() ? "" : "<rules>" + rules + "</rules>"));
}

Length gap_of(const Layout& layout) {
  return layout.openings[1].rect.left - layout.openings[0].rect.right;
}

}  // namespace

TEST_CASE("free windows that do not come out alike are told, with the amount") {
  // 17 in for three: 5 11/16, 5 5/8 and 5 11/16, of which the largest is 1/16 in more.
  const Job job = job_of(R"(<layers><layer board="Oat"/></layers><outer width="25" height="12"/>
      <borders all="3"/><arrange><row gap="1"><opening id="a" width="free" height="6"/>
      <opening id="b" width="free" height="6"/><opening id="c" width="free" height="6"/></row>
      </arrange>)");
  const Layout layout = lay_out(job).value();
  const Problems told = told_notes(layout, job);
  REQUIRE(told.size() == 1);
  CHECK(told.front().code == "layout-moved");
  CHECK(told.front().message ==
        "equal widths of the free openings: off by 1/16 in, since the sizes do not divide into "
        "whole steps of 1/16 in");
  std::set<Length> widths;
  for (const PlacedOpening& opening : layout.openings) widths.insert(opening.rect.width());
  CHECK(widths == std::set<Length>{sixty_fourths(360), sixty_fourths(364)});
}

TEST_CASE("a strong wish against a stated border is told, with the amount and the border") {
  const Job job = job_of(R"(<layers><layer board="Oat"/></layers><borders all="3"/>
      <arrange><opening id="a" width="6" height="6"/></arrange><rules>
      <fixed measure="border.left" length="4" strength="strong"/></rules>)");
  const Problems told = told_notes(lay_out(job).value(), job);
  REQUIRE(told.size() == 1);
  CHECK(told.front().code == "layout-gave-way");
  CHECK(told.front().message.find("is not met by 1 in; it gives way to the left border of 3 in") !=
        std::string::npos);
}

TEST_CASE("a strong rule narrows a free gap to less than the usual one") {
  CHECK(gap_of(with("", R"(<at-most measure="g" length="1/2" strength="strong"/>)")) ==
        sixty_fourths(32));
}

TEST_CASE("a free gap of the usual width comes before like borders and before a medium rule") {
  // Borders alike would leave the gap 1/2 in.
  const Layout layout = with(R"(<outer width="14"/><borders left="1 3/4"/>)");
  CHECK(gap_of(layout) == inches(1));
  CHECK(layout.borders.right == sixty_fourths(80));
  CHECK(gap_of(with("", R"(<at-most measure="g" length="1/2" strength="medium"/>)")) == inches(1));
}

TEST_CASE("borders alike come before equal gaps and before a medium rule") {
  const Layout layout = with(R"(<outer width="20"/><borders left="3"/>)",
                             R"(<fixed measure="border.right" length="5" strength="medium"/>)");
  CHECK(layout.borders.right == inches(3));
  CHECK(gap_of(layout) == inches(4));
}

TEST_CASE("equal gaps come before a medium rule, and a medium rule before the usual gap") {
  const auto gaps = [](const std::string& rules) {
    const Layout layout = laid_out(R"(<layers><layer board="Oat"/></layers><arrange><row>
      <opening width="5" height="5"/><gap id="g"/><opening width="5" height="5"/><gap id="h"/>
      <opening width="5" height="5"/></row></arrange><rules>)" +
                                   rules + "</rules>");
    return std::pair(layout.openings[1].rect.left - layout.openings[0].rect.right,
                     layout.openings[2].rect.left - layout.openings[1].rect.right);
  };
  CHECK(gaps(R"(<fixed measure="g" length="3" strength="medium"/>)") ==
        std::pair(inches(3), inches(3)));
  CHECK(gaps(R"(<fixed measure="g" length="3" strength="strong"/>)") ==
        std::pair(inches(3), inches(3)));
  CHECK(gaps(R"(<fixed measure="g" length="3" strength="medium"/>
                <fixed measure="h" length="2" strength="medium"/>)") ==
        std::pair(sixty_fourths(160), sixty_fourths(160)));
  CHECK(gaps(R"(<fixed measure="g" length="3" strength="weak"/>)") ==
        std::pair(inches(1), inches(1)));
}

TEST_CASE(
    "side borders like the top one come before a weak rule, and that before the usual border") {
  const Layout stated =
      with(R"(<borders top="4"/>)", R"(<fixed measure="border.left" length="3" strength="weak"/>)");
  CHECK(stated.borders == Sides{inches(4), inches(4), inches(4), inches(4)});
  const Layout free = with("", R"(<fixed measure="border.left" length="4" strength="weak"/>)");
  CHECK(free.borders == Sides{inches(4), inches(4), inches(4), inches(4)});
}

TEST_CASE("borders are 2 in on a small board and 3 in on a larger one where nothing is said") {
  CHECK(with("").borders.left == inches(3));
  CHECK(laid_out(R"(<layers><layer board="Oat"/></layers>
    <arrange><opening width="5" height="5"/></arrange>)")
            .borders.left == inches(2));
}

TEST_CASE("wishes of one rank that contradict one another share what they give up") {
  const Layout layout = with("", R"(<fixed measure="g" length="2" strength="strong"/>
    <fixed measure="g" length="6" strength="strong"/>)");
  CHECK(gap_of(layout) == inches(4));
}

TEST_CASE("openings of free size share what is left alike") {
  const Layout layout = laid_out(R"(<layers><layer board="Oat"/></layers>
    <outer width="24" height="14"/><borders all="3"/>
    <arrange><row gap="1"><opening width="free" height="8"/><opening width="free" height="8"/></row>
    </arrange>)");
  CHECK(layout.openings[0].rect.width() == sixty_fourths(8 * 64 + 32));
  CHECK(layout.openings[1].rect.width() == sixty_fourths(8 * 64 + 32));
}
