#include <catch2/catch.hpp>

#include "tests/engine/layout/jobs.h"

using namespace mullion;
using namespace test;

// "Measuring for a mat", a frame workshop's leaflet,
// framersworkshop.com/SpecialtyMats/matmeasuring.html.
TEST_CASE("an 8 x 10 in picture in an 11 x 14 in frame gets borders of 2 1/8 and 1 5/8 in") {
  const Layout layout = laid_out(R"(
    <pictures><picture id="p" width="10" height="8" overlap="1/8"/></pictures>
    <layers><layer board="Oat"/></layers>
    <outer width="14" height="11"/>
    <arrange><opening picture="p"/></arrange>)");
  CHECK(layout.openings[0].rect.width() == sixty_fourths(9 * 64 + 48));
  CHECK(layout.openings[0].rect.height() == sixty_fourths(7 * 64 + 48));
  CHECK(layout.borders ==
        Sides{sixty_fourths(136), sixty_fourths(104), sixty_fourths(136), sixty_fourths(104)});
}

// mmresourcecenter.org/matting.html, the construction; the figures worked out from it by hand.
TEST_CASE("the optical centre of an 8 x 10 in 16 x 20 leaves 4, 3 3/4 and 6 1/4 in") {
  const Layout layout = laid_out(R"(
    <pictures><picture id="p" width="8" height="10" overlap="0"/></pictures>
    <layers><layer board="Oat"/></layers>
    <outer width="16" height="20"/>
    <borders bottom="optical"/>
    <arrange><opening picture="p"/></arrange>)");
  CHECK(layout.borders == Sides{inches(4), sixty_fourths(240), inches(4), sixty_fourths(400)});
}

// "How to prepare a mat to frame a picture", webcasty.com, 2013; also common practice.
TEST_CASE("a bottom border 1/2 in wider than the top one moves the opening up") {
  const Layout layout = laid_out(R"(
    <pictures><picture id="p" width="8" height="10"/></pictures>
    <layers><layer board="Oat"/></layers>
    <outer width="14" height="18"/>
    <borders bottom-extra="1/2"/>
    <arrange><opening picture="p"/></arrange>)");
  CHECK(layout.borders.bottom - layout.borders.top == sixty_fourths(32));
  CHECK(layout.borders.left == layout.borders.right);
  CHECK(layout.borders.top == sixty_fourths(248));
}

TEST_CASE(
    "1/8 in between rabbet and blank is taken off the frame's size (common practice, no source)") {
  const Layout layout = laid_out(R"(
    <pictures><picture id="p" width="8" height="10"/></pictures>
    <layers><layer board="Oat"/></layers>
    <frame rabbet-width="14 1/8" rabbet-height="18 1/8"/>
    <arrange><opening picture="p"/></arrange>)");
  CHECK(layout.width == inches(14));
  CHECK(layout.height == inches(18));
}

TEST_CASE("a 3 in equal border is 3 in at all four sides (common practice, no source)") {
  const Layout layout = laid_out(R"(
    <pictures><picture id="p" width="10" height="8"/></pictures>
    <layers><layer board="Oat"/></layers>
    <borders all="3"/>
    <arrange><opening picture="p"/></arrange>)");
  CHECK(layout.borders == Sides{inches(3), inches(3), inches(3), inches(3)});
  CHECK(layout.width == sixty_fourths(15 * 64 + 48));
}
