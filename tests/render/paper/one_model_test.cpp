// One drawing, written in every format, is the same drawing: the PDF as Poppler and MuPDF show it,
// the SVG as librsvg does, and the PNG as it is.

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "render/paper/document.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/oracle/raster.h"

using namespace mullion;
using namespace mullion::paper;

namespace {

constexpr double dpi = 288, pixel = 72 / dpi;
constexpr PageSize page_size{inches(6), inches(4)};
const TextStyle type{.size = 12};

struct Written {
  std::string pdf, svg, png;
};

Written written(const Drawing& drawing, const std::string& name) {
  const std::string folder = oracle::scratch_folder("one-model-" + name);
  const Written files{folder + "/p.pdf", folder + "/p.svg", folder + "/p.png"};
  for (const auto& [format, path] :
       {std::pair{Format::pdf, files.pdf}, {Format::svg, files.svg}, {Format::png, files.png}}) {
    oracle::write_file(path, write(format, {{page_size, "", drawing}}, {name, "", dpi}));
  }
  return files;
}

std::array<oracle::Raster, 3> rasters_of(const Written& files) {
  return {oracle::rasterise_pdf(files.pdf, 1, dpi, oracle::Renderer::poppler),
          oracle::rasterise_svg(files.svg, dpi), oracle::read_png(files.png, dpi)};
}

// Around what is dark, in points.
Box ink_of(const oracle::Raster& raster) {
  int left = raster.width, top = raster.height, right = -1, bottom = -1;
  for (int y = 0; y < raster.height; ++y) {
    for (int x = 0; x < raster.width; ++x) {
      if (raster.at(x, y) >= 128) continue;
      left = std::min(left, x);
      right = std::max(right, x);
      top = std::min(top, y);
      bottom = std::max(bottom, y);
    }
  }
  return {left * pixel, top * pixel, (right + 1 - left) * pixel, (bottom + 1 - top) * pixel};
}

// How dark the page is in all, in pixels that are black.
double darkness(const oracle::Raster& raster) {
  double sum = 0;
  for (const unsigned char grey : raster.grey) sum += 1 - grey / 255.0;
  return sum;
}

void check_alike(const Drawing& drawing, const std::string& name, double dark_share = 0.03) {
  const auto rasters = rasters_of(written(drawing, name));
  const Box ink = ink_of(rasters[0]);
  REQUIRE(ink.width > 5);
  for (const oracle::Raster& raster : rasters) {
    INFO(name);
    const Box other = ink_of(raster);
    CHECK(other.x == Approx(ink.x).margin(1.01 * pixel));
    CHECK(other.y == Approx(ink.y).margin(1.01 * pixel));
    CHECK(other.x + other.width == Approx(ink.x + ink.width).margin(1.01 * pixel));
    CHECK(other.y + other.height == Approx(ink.y + ink.height).margin(1.01 * pixel));
    CHECK(darkness(raster) == Approx(darkness(rasters[0])).epsilon(dark_share));
  }
}

Drawing of_text(const std::string& content) {
  Drawing drawing;
  drawing.text(content, {60, 100}, type);
  return drawing;
}

// Its upper left quarter is dark.
picture::Pixels marked_picture() {
  picture::Pixels pixels;
  pixels.size = {96, 64};
  for (int y = 0; y < 64; ++y) {
    for (int x = 0; x < 96; ++x) {
      pixels.argb.push_back(x < 48 && y < 32 ? 0xFF101010 : 0xFFE0E0E0);
    }
  }
  return pixels;
}

constexpr Transform picture_place{144, 0, 0, 96, 100, 60};

void check_marked(const Drawing& drawing, const std::string& name) {
  for (const oracle::Raster& raster : rasters_of(written(drawing, name))) {
    INFO(name);
    const auto at = [&](double x, double y) {
      return raster.at(static_cast<int>(x / pixel), static_cast<int>(y / pixel));
    };
    CHECK(at(95, 55) == 255);
    CHECK(at(110, 70) < 40);
    CHECK(at(168, 104) < 60);
    CHECK(at(178, 104) == Approx(0xE0).margin(12));
    CHECK(at(168, 112) == Approx(0xE0).margin(12));
    CHECK(at(240, 150) == Approx(0xE0).margin(8));
    CHECK(at(248, 160) == 255);
  }
}

}  // namespace

TEST_CASE("the lines of a hatching end at the same spots in PDF and SVG") {
  Drawing drawing;
  drawing.stroke(hatching(circle({200, 140}, 90), 9), {2, {0, 0, 0}, {}, 1});
  const Written files = written(drawing, "hatching");
  const oracle::DrawnPage svg = oracle::drawn_svg(files.svg);
  for (const auto reader : {oracle::Reader::mupdf, oracle::Reader::poppler}) {
    const oracle::DrawnPage pdf = oracle::drawn_pages(files.pdf, reader).at(0);
    REQUIRE(pdf.strokes.size() >= 19);
    REQUIRE(pdf.strokes.size() == svg.strokes.size());
    for (std::size_t i = 0; i < pdf.strokes.size(); ++i) {
      CHECK(pdf.strokes[i].from.x == Approx(svg.strokes[i].from.x).margin(0.02));
      CHECK(pdf.strokes[i].from.y == Approx(svg.strokes[i].from.y).margin(0.02));
      CHECK(pdf.strokes[i].to.x == Approx(svg.strokes[i].to.x).margin(0.02));
      CHECK(pdf.strokes[i].to.y == Approx(svg.strokes[i].to.y).margin(0.02));
    }
  }
  check_alike(drawing, "hatched");
}

TEST_CASE("a fitted text takes the same room in PDF, SVG and PNG") {
  const std::string shown = fitted("A week by the sea, at the lighthouse", 110, type);
  REQUIRE(shown.ends_with("\xE2\x80\xA6"));
  check_alike(of_text(shown), "fitted", 0.06);
  for (const oracle::Raster& raster : rasters_of(written(of_text(shown), "fitted-width"))) {
    const Box ink = ink_of(raster);
    CHECK(ink.x >= 60 - pixel);
    CHECK(ink.x + ink.width <= 60 + 110 + pixel);
    CHECK(ink.width > 0.9 * text_width(shown, type));
  }
}

TEST_CASE("turned, tracked and wrapped texts lie alike in PDF, SVG and PNG") {
  Drawing turned, tracked, wrapped;
  turned.text("13 3/4 in", {200, 200}, {.size = 14, .anchor = Anchor::centre, .turn = -60});
  tracked.text("MATERIALS", {60, 100}, {.size = 14, .bold = true, .tracking = 3});
  wrapped.text(Text("Fresh blade, cut away from your hands, test cut on scrap.", type, 120),
               {60, 60});
  check_alike(turned, "turned", 0.06);
  check_alike(tracked, "tracked", 0.06);
  check_alike(wrapped, "wrapped", 0.06);
}

TEST_CASE("a text that a circle clips ends at the circle in PDF, SVG and PNG") {
  Drawing drawing;
  drawing.clipped(of_text("HHHHHHHHHHHHHHHHHHHH"), circle({110, 96}, 20));
  check_alike(drawing, "clipped-text", 0.06);
  for (const oracle::Raster& raster : rasters_of(written(drawing, "in-circle"))) {
    const Box ink = ink_of(raster);
    CHECK(ink.x >= 90 - pixel);
    CHECK(ink.x + ink.width <= 130 + pixel);
    CHECK(ink.width > 34);
  }
}

TEST_CASE("a group that is turned, scaled and clipped lies alike in PDF, SVG and PNG") {
  Drawing inner, drawing;
  inner.fill(rounded_rectangle({-60, -30, 120, 60}, 12), {{0x20, 0x20, 0x20}})
      .stroke(ellipse({-80, -40, 160, 80}), {.width = 3, .dashes = {9, 5}});
  paper::Group group{std::make_shared<const Drawing>(inner),
                     then(then(scaled(1.5), turned(25)), shifted(210, 140)),
                     Box{150, 100, 150, 70},
                     "",
                     "",
                     false};
  drawing.place(group);
  check_alike(drawing, "turned-group");
  group.clip = circle({200, 150}, 55);
  check_alike(Drawing().place(group), "turned-in-circle");
}

TEST_CASE("a shade changes from end to end alike in PDF, SVG and PNG") {
  Drawing drawing;
  drawing.shade(
      rectangle({50, 50, 300, 100}),
      {{100, 0}, {300, 0}, {{0, {0, 0, 0}}, {0.5, {0x80, 0x80, 0x80}}, {1, {0, 0, 0}, 0}}});
  for (const oracle::Raster& raster : rasters_of(written(drawing, "shade"))) {
    const auto at = [&](double x) { return raster.at(static_cast<int>(x / pixel), 400); };
    CHECK(at(45) == 255);
    CHECK(at(60) < 4);  // before its first end as at its end
    CHECK(at(150) == Approx(0x40).margin(3));
    CHECK(at(200) == Approx(0x80).margin(3));
    CHECK(at(250) == Approx(255 - 127 * 0.5 * 0.5 - 32).margin(40));
    CHECK(at(340) > 251);
  }
}

TEST_CASE("a picture lies alike in PDF, SVG and PNG, as pixels and as a JPEG file's data") {
  const auto pixels = std::make_shared<const picture::Pixels>(marked_picture());
  for (const bool lossy : {false, true}) {
    check_marked(Drawing().image({DecodedPicture{pixels, lossy}, picture_place}),
                 lossy ? "lossy" : "exact");
  }
  const auto bytes = std::make_shared<const std::string>(picture::encode_jpeg(*pixels, 95));
  const picture::Photograph jpeg{read_image_header(*bytes).value(), bytes};
  check_marked(Drawing().image({jpeg, picture_place}), "jpeg");
}

TEST_CASE("a picture that is shown twice is in an SVG once") {
  const auto pixels = std::make_shared<const picture::Pixels>(marked_picture());
  Drawing once, twice;
  once.image({DecodedPicture{pixels, true}, {60, 0, 0, 40, 20, 20}});
  twice = once;
  twice.image({DecodedPicture{pixels, true}, {60, 0, 0, 40, 120, 20}});
  const std::string svg = write_svg(twice, page_size, "");
  CHECK(svg.size() < write_svg(once, page_size, "").size() + 200);
  for (const oracle::Raster& raster : rasters_of(written(twice, "twice"))) {
    CHECK(raster.at(100, 100) < 60);
    CHECK(raster.at(500, 100) < 60);
    CHECK(raster.at(340, 100) == 255);
  }
}

TEST_CASE("the elements of an SVG bear the prefix, in points") {
  Drawing inner, drawing;
  inner.fill(rectangle({0, 0, 100, 100}), {{0, 0, 0}});
  drawing.clipped(inner, circle({50, 50}, 20));
  const std::string elements = svg_elements(drawing, "A-");
  CHECK(elements.find("id=\"A-clip-1\"") != std::string::npos);
  CHECK(elements.find("url(#A-clip-1)") != std::string::npos);
  CHECK(elements.find("M0,0L100,0L100,100L0,100Z") != std::string::npos);
}

TEST_CASE("strokes that differ in place and width alone refer to one path, and look as before") {
  Drawing shadow, plain;
  for (int i = 1; i <= 5; ++i) {
    const Path moved = transformed(circle({50, 50}, 30), shifted(i * 0.5, i * 0.25));
    shadow.stroke(moved, {1.0 * i, {0, 0, 0}, {}, 0.2});
    plain.stroke(moved, {1.0 * i, {0, 0, 0}, {}, 0.2});
    plain.fill(rectangle({0, 0, 0.01, 0.01}), {{0xff, 0xff, 0xff}, 0});  // which parts them
  }
  const std::string shared = svg_elements(shadow, "A-"), parted = svg_elements(plain, "A-");
  CHECK(shared.size() * 2 < parted.size());
  CHECK(shared.find("<use href=\"#A-path-1\"") != std::string::npos);
  CHECK(parted.find("<use") == std::string::npos);
  const auto drawn = [](const std::string& elements, const std::string& name) {
    const std::string path = oracle::scratch_folder("alike") + "/" + name + ".svg";
    oracle::write_file(path,
                       "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 100\" "
                       "width=\"300\" height=\"300\">" +
                           elements + "</svg>");
    REQUIRE(oracle::run({"rsvg-convert", path, "-o", path + ".png"}).status == 0);
    return oracle::read_file(path + ".png");
  };
  CHECK(drawn(shared, "shared") == drawn(parted, "parted"));
}
