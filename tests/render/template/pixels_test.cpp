// The template as dots: at 600 dpi a dot is 0.042 mm, and two renderers that share no code must put
// every line on the same dots.

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/oracle/raster.h"
#include "tests/render/template/made.h"

using oracle::Raster;
using oracle::Spot;

namespace {

// A 6 x 5 in board with one window of 2 x 1 1/2 in, 1 in from the left and the top as seen from the
// front: from behind it lies 3 to 5 in from the left.
const std::string small_job = R"(<job version="1" reference="P-1" unit="in" increment="1/16">
  <layers><layer name="Top mat" board="Oat" thickness="1/16"/></layers>
  <outer width="6" height="5"/>
  <borders left="1" top="1"/>
  <arrange><opening width="2" height="1 1/2"/></arrange>
</job>
)";

// How many of 41 places along the line, given in points, show a dark dot on it and light ones
// 8 dots to either side.
int places_on_line(const Raster& raster, Spot from, Spot to) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const double aside = 8 * 72 / raster.dpi;
  const Spot across{(to.y - from.y) / length * aside, (from.x - to.x) / length * aside};
  int count = 0;
  for (int i = 0; i <= 40; ++i) {
    const double x = from.x + (to.x - from.x) * i / 40, y = from.y + (to.y - from.y) * i / 40;
    count += raster.darkest_near(x, y) < 100 &&
             raster.darkest_near(x + across.x, y + across.y) > 140 &&
             raster.darkest_near(x - across.x, y - across.y) > 140;
  }
  return count;
}

double share_that_differs(const Raster& a, const Raster& b) {
  REQUIRE(std::abs(a.width - b.width) <= 1);
  REQUIRE(std::abs(a.height - b.height) <= 1);
  // A dot may be grey at a line's edge in one and white in the other: compare with the dots around.
  int differs = 0, dark = 0;
  for (int y = 1; y + 2 < std::min(a.height, b.height); ++y) {
    for (int x = 1; x + 2 < std::min(a.width, b.width); ++x) {
      if (a.at(x, y) > 100) continue;
      ++dark;
      int least = 255;
      for (int i = -1; i <= 1; ++i) {
        for (int j = -1; j <= 1; ++j) least = std::min(least, b.at(x + j, y + i));
      }
      if (least > 160) ++differs;
    }
  }
  REQUIRE(dark > 1000);
  return static_cast<double>(differs) / dark;
}

}  // namespace

TEST_CASE("Poppler, MuPDF and Ghostscript put the template's lines on the same dots") {
  const std::string folder = oracle::scratch_folder("template-dots");
  oracle::write_file(folder + "/job.xml", small_job);
  const std::string pdf = made::template_of(folder + "/job.xml", folder + "/template.pdf");
  const Raster poppler = oracle::rasterise_pdf(pdf, 1, 600, oracle::Renderer::poppler);
  const Raster mupdf = oracle::rasterise_pdf(pdf, 1, 600, oracle::Renderer::mupdf);
  const Raster ghostscript = oracle::rasterise_pdf(pdf, 1, 600, oracle::Renderer::ghostscript);
  // What is left are dots of letters, which each renderer smooths in its own way.
  CHECK(share_that_differs(poppler, mupdf) < 0.003);
  CHECK(share_that_differs(mupdf, poppler) < 0.003);
  CHECK(share_that_differs(poppler, ghostscript) < 0.003);
  CHECK(share_that_differs(ghostscript, mupdf) < 0.003);

  const auto board = oracle::find_rectangle(oracle::drawn_pages(pdf).at(0), 6 * 72, 5 * 72, 0.01);
  REQUIRE(board);
  const auto spot = [&](double x, double y) { return Spot{board->x + x * 72, board->y + y * 72}; };
  for (const Raster* raster : {&poppler, &mupdf, &ghostscript}) {
    CHECK(places_on_line(*raster, spot(3.05, 1), spot(4.95, 1)) == 41);
    CHECK(places_on_line(*raster, spot(3.05, 2.5), spot(4.95, 2.5)) == 41);
    CHECK(places_on_line(*raster, spot(3, 1.05), spot(3, 2.45)) == 41);
    CHECK(places_on_line(*raster, spot(5, 1.05), spot(5, 2.45)) == 41);
    CHECK(places_on_line(*raster, spot(4.99, 1.05), spot(4.99, 2.45)) == 0);
    CHECK(places_on_line(*raster, spot(1, 1.05), spot(1, 2.45)) == 0);
  }
}
