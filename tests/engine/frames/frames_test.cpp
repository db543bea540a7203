#include <catch2/catch.hpp>

#include "engine/frames/stock_sizes.h"
#include "engine/job/read.h"

using namespace mullion;

namespace {

Job one_picture(const std::string& rest) {
  return parse_job(
             "<job version=\"1\" reference=\"F\" unit=\"in\" increment=\"1/16\"><pictures>"
             "<picture id=\"p\" width=\"10\" height=\"8\"/></pictures>"
             "<layers><layer board=\"Oat\"/></layers>" +
                 rest + "<arrange><opening picture=\"p\"/></arrange></job>",
             "f.xml")
      .value();
}

}  // namespace

// "Measuring for a mat", a frame workshop's leaflet,
// framersworkshop.com/SpecialtyMats/matmeasuring.html
TEST_CASE("an 8 x 10 in picture fits an 11 x 14 in frame with borders of 2 1/8 and 1 5/8 in") {
  const auto fits =
      fitting_frames(one_picture(""), common_frame_sizes(Unit::inch), sixty_fourths(96));
  REQUIRE_FALSE(fits.empty());
  CHECK(fits.front().width == inches(14));
  CHECK(fits.front().height == inches(11));
  CHECK(fits.front().borders ==
        Sides{sixty_fourths(136), sixty_fourths(104), sixty_fourths(136), sixty_fourths(104)});
}

TEST_CASE("a size with less than the least border is left out, and a weighted bottom is kept") {
  const auto fits = fitting_frames(one_picture("<borders bottom-extra=\"1/2\"/>"),
                                   common_frame_sizes(Unit::inch), inches(2));
  REQUIRE_FALSE(fits.empty());
  for (const FrameFit& fit : fits) {
    CHECK(fit.borders.top >= inches(2));
    CHECK(fit.borders.left >= inches(2));
    CHECK(fit.borders.bottom - fit.borders.top == sixty_fourths(32));
  }
}

TEST_CASE("a shop's own list is read, and a bad one is refused with its place") {
  const auto own = parse_frame_sizes(
      "<frame-sizes unit=\"cm\">\n  <size width=\"30\" height=\"40\"/>\n</frame-sizes>", "own.xml");
  REQUIRE(own.has_value());
  CHECK(own->front().width == millimetres(300));
  const auto bad = parse_frame_sizes(
      "<frame-sizes>\n  <size width=\"x\" height=\"4\"/>\n</frame-sizes>", "own.xml");
  REQUIRE_FALSE(bad.has_value());
  CHECK(bad.error().front().place.line == 2);
  CHECK_FALSE(parse_frame_sizes("<frame-sizes", "own.xml").has_value());
  CHECK_FALSE(parse_frame_sizes("<sizes/>", "own.xml").has_value());
}
