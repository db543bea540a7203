#include <array>
#include <catch2/catch.hpp>

#include "render/paper/image.h"
#include "tests/oracle/program.h"
#include "tests/oracle/raster.h"
#include "tests/render/picture/files.h"

using namespace mullion;

namespace {

// Which quarter of the page is dark: 0 upper left, 1 upper right, 2 lower right, 3 lower left.
int dark_quarter(const oracle::Raster& page) {
  const int near_x = page.width / 4, near_y = page.height / 4;
  const int far_x = page.width - near_x, far_y = page.height - near_y;
  const std::array<int, 4> tones{page.at(near_x, near_y), page.at(far_x, near_y),
                                 page.at(far_x, far_y), page.at(near_x, far_y)};
  int dark = -1;
  for (int i = 0; i < 4; ++i) {
    if (tones[static_cast<std::size_t>(i)] > 128) continue;
    CHECK(dark < 0);
    dark = i;
  }
  return dark;
}

// A picture of 60 x 40 pixels, dark in its upper left quarter, stored in that orientation.
int drawn_quarter(int orientation, int quarters, paper::Format format) {
  const std::string folder = oracle::scratch_folder("turned");
  oracle::write_file(folder + "/source", files::jpeg(60, 40, files::Kind::grey, orientation));
  auto photograph = picture::open_photograph(folder + "/source");
  REQUIRE(photograph.has_value());
  photograph->header = photograph->header.turned(quarters);
  const auto& header = photograph->header;
  const bool upright = header.shown_height() > header.shown_width();
  const double width = upright ? 48 : 72, height = upright ? 72 : 48;
  const paper::PageSize size{upright ? inches(2) : inches(3), upright ? inches(3) : inches(2)};
  paper::Drawing drawing;
  REQUIRE(
      paper::draw_photograph(drawing, format, *photograph, {0, 0, width * 3, height * 3}, {}, {}));
  const std::string path = folder + (format == paper::Format::pdf ? "/p.pdf" : "/p.svg");
  oracle::write_file(path, paper::write(format, {{size, "", drawing}}, {"turned", "", 144}));
  return dark_quarter(format == paper::Format::pdf
                          ? oracle::rasterise_pdf(path, 1, 72, oracle::Renderer::poppler)
                          : oracle::rasterise_svg(path, 72));
}

}  // namespace

// The unturned quarters by orientation are those of Exif 2.3, table 6: rows and columns of the
// stored picture at the sides of the shown one.
TEST_CASE("a picture that hangs turned is drawn turned, whatever the orientation of its file") {
  const std::array<int, 8> unturned{0, 1, 2, 3, 0, 1, 2, 3};
  for (int orientation = 1; orientation <= 8; ++orientation) {
    for (int quarters = 0; quarters < 4; ++quarters) {
      INFO("orientation " << orientation << ", quarters " << quarters);
      const int expected = (unturned[static_cast<std::size_t>(orientation - 1)] + quarters) % 4;
      CHECK(drawn_quarter(orientation, quarters, paper::Format::pdf) == expected);
      CHECK(drawn_quarter(orientation, quarters, paper::Format::svg) == expected);
    }
  }
}
