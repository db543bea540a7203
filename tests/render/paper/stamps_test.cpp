// Drawings that many pages repeat, as other programs see them (form XObjects: ISO 32000-1, 8.10).

#include <catch2/catch.hpp>

#include "render/paper/document.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::paper;

namespace {

constexpr PageSize a4{millimetres(210), millimetres(297)};
constexpr int page_count = 20;

// A scale of 100 marks and a text.
std::shared_ptr<const Drawing> scale() {
  Path lines;
  for (int i = 0; i <= 100; ++i) lines.append(line({20.0 + 5 * i, 40}, {20.0 + 5 * i, 50}));
  Drawing drawing;
  drawing.stroke(lines, {0.4, {0, 0, 0}, {}, 1}).text("100 steps", {20, 70}, {});
  return std::make_shared<const Drawing>(std::move(drawing));
}

// Pages that show the scale 100 points lower than it is drawn.
std::string pages_with_scale(bool repeated, const std::string& folder) {
  paper::Group group{scale(), shifted(0, 100), {}, "scale", "", repeated};
  Drawing drawing;
  drawing.place(group);
  const std::vector<Page> pages(page_count, Page{a4, "", drawing});
  const std::string path = oracle::scratch_folder("stamps-" + folder) + "/scale.pdf";
  oracle::write_file(path, write_pdf(pages, {"Scale", ""}));
  return path;
}

}  // namespace

TEST_CASE("a drawing that pages repeat is seen on each as if it were drawn there") {
  const std::string once = pages_with_scale(true, "once"), anew = pages_with_scale(false, "anew");
  CHECK(oracle::run({"qpdf", "--check", once}).status == 0);
  for (const auto reader : {oracle::Reader::mupdf, oracle::Reader::poppler}) {
    const auto seen = oracle::drawn_pages(once, reader), drawn = oracle::drawn_pages(anew, reader);
    REQUIRE(seen.size() == page_count);
    for (std::size_t page = 0; page < page_count; ++page) {
      REQUIRE(seen[page].strokes.size() == 101);
      for (std::size_t i = 0; i < 101; ++i) {
        const oracle::Stroke &a = seen[page].strokes[i], &b = drawn.at(page).strokes.at(i);
        CHECK(a.from.x == Approx(b.from.x).margin(0.01));
        CHECK(a.from.y == Approx(b.from.y).margin(0.01));
        CHECK(a.to.y == Approx(b.to.y).margin(0.01));
        CHECK(a.width == Approx(b.width).margin(0.001));
      }
      CHECK(oracle::text_of(seen[page]) == oracle::text_of(drawn[page]));
    }
  }
}

TEST_CASE("a drawing that pages repeat is held once") {
  const std::string once = oracle::read_file(pages_with_scale(true, "size-once"));
  const std::string anew = oracle::read_file(pages_with_scale(false, "size-anew"));
  CHECK(once.size() * 3 < anew.size() * 2);
}
