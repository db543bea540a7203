#include <catch2/catch.hpp>

#include "engine/mat/rect.h"
#include "tests/engine/mat/mats.h"
#include "tests/engine/mat/measure.h"

using namespace mullion;
using namespace test;

namespace {

const std::string two = R"(
  <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="6"/></pictures>
  <layers><layer board="Oat"/></layers><borders all="3"/>)";

}  // namespace

TEST_CASE("a groove around a rectangle is the rectangle at its distance") {
  const Built b = built(two + R"(<arrange><row gap="2">
    <opening picture="a"><groove distance="1/2" width="1/16"/></opening>
    <opening picture="b"/></row></arrange>)");
  REQUIRE(b.mat.grooves.size() == 1);
  CHECK(b.mat.grooves[0].openings == std::vector<int>{1});
  CHECK(b.mat.grooves[0].line == rectangle(outset(b.window(1, 1).back, sixty_fourths(32))));
}

TEST_CASE("a groove around an oval is its parallel, at the distance from the back edge") {
  const Built b = built(two + R"(<arrange><row gap="2">
    <opening picture="a"/>
    <opening picture="b" shape="ellipse"><groove distance="1/2" width="1/16"/></opening></row></arrange>)");
  REQUIRE(b.mat.grooves.size() == 1);
  const Spread spread =
      distances(sampled(b.mat.grooves[0].line, 10), sampled(b.window(1, 2).back_edge, 400));
  CHECK(spread.least == Approx(20320).margin(12));
  CHECK(spread.most == Approx(20320).margin(12));
}

TEST_CASE("grooves go around a group, and around all openings") {
  const Built b = built(two + R"(<arrange><groove distance="3/4" width="1/16"/>
    <row gap="2"><groove distance="1/2" width="1/16"/><opening picture="a"/><opening picture="b"/></row>
    </arrange>)");
  REQUIRE(b.mat.grooves.size() == 2);
  const Rect group = b.layout.groups[0].rect;
  CHECK(b.mat.grooves[0].line == rectangle(outset(group, sixty_fourths(32))));
  CHECK(b.mat.grooves[1].line == rectangle(outset(group, sixty_fourths(48))));
  CHECK(b.mat.grooves[1].openings == std::vector<int>{1, 2});
}

TEST_CASE("a groove around all openings follows the shape of a single one") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/></layers>
    <arrange><groove distance="1/2" width="1/16"/><opening picture="a" shape="circle"/></arrange>)");
  REQUIRE(b.mat.grooves.size() == 1);
  CHECK(b.mat.grooves[0].line.segments.at(0).curved);
}
