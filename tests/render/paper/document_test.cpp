// Documents as other programs see them. Paper sizes: ISO 216 and ANSI/ASME Y14.1; PDF units of
// 1/72 in: ISO 32000-1, 8.3.2.3.

#include "render/paper/document.h"

#include <catch2/catch.hpp>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/oracle/raster.h"

using namespace mullion;
using namespace mullion::paper;

namespace {

constexpr PageSize a4{millimetres(210), millimetres(297)};
constexpr PageSize letter{sixty_fourths(544), inches(11)};
constexpr PageSize a0{millimetres(841), millimetres(1189)};

const TextStyle plain{};

std::string saved(const std::string& bytes, const std::string& folder, const std::string& name) {
  const std::string path = oracle::scratch_folder("document-" + folder) + "/" + name;
  oracle::write_file(path, bytes);
  return path;
}

std::string three_pages() {
  std::vector<Page> pages;
  for (const auto& [size, name] :
       {std::pair{a4, "First"}, {letter, "Second"}, {a0, "Third, Ødegård"}}) {
    Drawing drawing;
    drawing.text("Kelp, low water: Ødegård, 8 1/2 \xC3\x97 11", {72, 72}, plain);
    drawing.stroke(line({0, 0}, {100, 100}));
    pages.push_back({size, name, drawing});
  }
  return write_pdf(pages, {"Three pages", "2026-03-05"});
}

std::string one_page(Format format, double dpi = 150) {
  Drawing drawing;
  drawing.fill(rectangle({72, 144, 216, 288}), {{0, 0, 0}, 1});
  return write(format, {{letter, "", drawing}}, {"One page", "", dpi});
}

unsigned big_endian(const std::string& bytes, std::size_t at) {
  unsigned value = 0;
  for (std::size_t i = 0; i < 4; ++i)
    value = value << 8 | static_cast<unsigned char>(bytes.at(at + i));
  return value;
}

}  // namespace

TEST_CASE("every page of a PDF has its own size") {
  const auto pages = oracle::drawn_pages(saved(three_pages(), "sizes", "three.pdf"));
  REQUIRE(pages.size() == 3);
  CHECK(pages[0].width == Approx(210 / 25.4 * 72).margin(0.01));
  CHECK(pages[0].height == Approx(297 / 25.4 * 72).margin(0.01));
  CHECK(pages[1].width == 612);
  CHECK(pages[1].height == 792);
  CHECK(pages[2].width == Approx(841 / 25.4 * 72).margin(0.01));
  CHECK(pages[2].height == Approx(1189 / 25.4 * 72).margin(0.01));
}

TEST_CASE("bookmarks lead to the pages") {
  const std::string pdf = saved(three_pages(), "bookmarks", "three.pdf");
  const std::string outline = oracle::run({"mutool", "show", pdf, "outline"}).out;
  CHECK(outline.find("\"First\"\t#page=1&") != std::string::npos);
  CHECK(outline.find("\"Second\"\t#page=2&") != std::string::npos);
  CHECK(outline.find("\"Third, Ødegård\"\t#page=3&") != std::string::npos);
}

TEST_CASE("qpdf finds nothing wrong, fonts are embedded, no scaling is asked for") {
  const std::string pdf = saved(three_pages(), "check", "three.pdf");
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  const std::string fonts = oracle::run({"pdffonts", pdf}).out;
  CHECK(fonts.find("DejaVuSans") != std::string::npos);
  CHECK(fonts.find(" no ") == std::string::npos);
  // ISO 32000-1, table 150.
  CHECK(oracle::run({"qpdf", "--json", "--json-key=qpdf", pdf})
            .out.find("\"/PrintScaling\": \"/None\"") != std::string::npos);
}

TEST_CASE("the same drawing gives the same bytes, and the only date is the one given") {
  CHECK(three_pages() == three_pages());
  for (const Format format : {Format::svg, Format::png}) {
    CHECK(one_page(format) == one_page(format));
  }
  const std::string pdf = saved(three_pages(), "date", "three.pdf");
  const std::string info = oracle::run({"pdfinfo", "-isodates", pdf}).out;
  CHECK(info.find("CreationDate:    2026-03-05T00:00:00Z") != std::string::npos);
  CHECK(info.find("ModDate") == std::string::npos);
}

TEST_CASE("a box of 3 x 4 in is that large in PDF, SVG and PNG") {
  const double dpi = 96;
  const std::string pdf = saved(one_page(Format::pdf), "box-pdf", "box.pdf");
  const std::string svg = saved(one_page(Format::svg), "box-svg", "box.svg");
  const std::string png = saved(one_page(Format::png, dpi), "box-png", "box.png");
  const auto rasters = {oracle::rasterise_pdf(pdf, 1, dpi, oracle::Renderer::poppler),
                        oracle::rasterise_svg(svg, dpi), oracle::read_png(png, dpi)};
  for (const oracle::Raster& raster : rasters) {
    CHECK(raster.width == 816);
    CHECK(raster.height == 1056);
    CHECK(raster.at(95, 300) == 255);
    CHECK(raster.at(96, 192) == 0);
    CHECK(raster.at(96 + 287, 192 + 383) == 0);
    CHECK(raster.at(96 + 288, 300) == 255);
    CHECK(raster.at(200, 192 + 384) == 255);
  }
}

TEST_CASE("a PNG says how many dots make a metre (pHYs, ISO/IEC 15948, 11.3.5.3)") {
  const std::string png = one_page(Format::png, 300);
  const std::size_t at = png.find("pHYs");
  REQUIRE(at != std::string::npos);
  CHECK(big_endian(png, at + 4) == 11811);
  CHECK(big_endian(png, at + 8) == 11811);
  CHECK(png.at(at + 12) == 1);
}

TEST_CASE("an SVG or PNG has one page, and a document needs one") {
  for (const Format format : {Format::svg, Format::png}) {
    CHECK_THROWS_AS(write(format, {{a4, "", {}}, {a4, "", {}}}, {}), std::logic_error);
  }
  for (const Format format : {Format::pdf, Format::svg, Format::png}) {
    CHECK_THROWS_AS(write(format, {}, {}), std::logic_error);
  }
}

TEST_CASE("a PNG that would fill the memory is refused") {
  CHECK_THROWS_AS(write(Format::png, {{a0, "", {}}}, {"Too large", "", 1200}), std::runtime_error);
}
