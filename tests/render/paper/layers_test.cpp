// Layers of documents as other programs see them (optional content: ISO 32000-1, 8.11).

#include <catch2/catch.hpp>

#include "render/paper/document.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/pdf_layers.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::paper;

namespace {

constexpr PageSize a4{millimetres(210), millimetres(297)};

// Two pages; on each a line in the layer of that name, one in a layer "Other" and one in none.
std::string two_pages(const std::string& name, const std::string& folder) {
  Drawing named, other, all;
  named.stroke(line({10, 20}, {100, 20})).text("/Div << /MCID 0 >> BDC", {10, 50}, {});
  other.stroke(line({10, 30}, {100, 30}));
  all.stroke(line({10, 10}, {100, 10})).place(named, {}, "", name).place(other, {}, "", "Other");
  const std::vector<Page> pages(2, Page{a4, "", all});
  const std::string path = oracle::scratch_folder("layers-" + folder) + "/layers.pdf";
  oracle::write_file(path, write_pdf(pages, {"Layers", ""}));
  return path;
}

std::vector<double> heights_of_lines(const oracle::DrawnPage& page) {
  std::vector<double> heights;
  for (const oracle::Stroke& stroke : page.strokes) heights.push_back(stroke.from.y);
  return heights;
}

}  // namespace

TEST_CASE("a layer of the same name on two pages is one layer that starts shown") {
  const std::string pdf = two_pages("Cut lines", "one");
  CHECK(oracle::pdf_layers(pdf) == std::vector<std::string>{"Cut lines", "Other"});
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  for (const oracle::DrawnPage& page : oracle::drawn_pages(pdf)) {
    CHECK(page.strokes.size() == 3);
    CHECK(page.labels.size() == 1);
  }
}

TEST_CASE("a hidden layer is hidden on all pages, and what lies outside it stays") {
  const std::string without = oracle::without_layer(two_pages("Cut lines", "off"), "Cut lines");
  CHECK(oracle::run({"qpdf", "--check", without}).status == 0);
  for (const auto reader : {oracle::Reader::mupdf, oracle::Reader::poppler}) {
    const auto pages = oracle::drawn_pages(without, reader);
    REQUIRE(pages.size() == 2);
    for (const oracle::DrawnPage& page : pages) {
      const std::vector<double> heights = heights_of_lines(page);
      REQUIRE(heights.size() == 2);
      // Poppler's copy has a page of whole points.
      CHECK(heights[0] == Approx(10).margin(0.2));
      CHECK(heights[1] == Approx(30).margin(0.2));
      CHECK(page.labels.empty());
    }
  }
}

TEST_CASE("a layer may have any name") {
  for (const std::string name :
       {"\xD0\xA1\xD1\x80\xD0\xB5\xD0\xB7", "a (b) \\ <<c>> 'd'", "1 0 R"}) {
    const std::string pdf = two_pages(name, "name");
    CHECK(oracle::pdf_layers(pdf) == std::vector<std::string>{name, "Other"});
    CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  }
}
