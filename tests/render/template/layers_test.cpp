// Layers of the written PDF, switched off one by one (optional content: ISO 32000-1, 8.11) and read
// by MuPDF and by Poppler.

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/joined_sheets.h"
#include "tests/oracle/pdf_layers.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;
using oracle::DrawnPage;
using oracle::Reader;

namespace {

struct Ink {
  std::string what;
  double lowest = 0;  // points from the page's top
  bool operator<(const Ink& other) const { return what < other.what; }
};

// What a page shows, in rising order.
std::vector<Ink> ink_of(const DrawnPage& page) {
  std::vector<Ink> ink;
  const auto text = [](double value) { return std::to_string(std::lround(value * 100)) + " "; };
  for (const oracle::Stroke& s : page.strokes) {
    ink.push_back({"line " + text(s.from.x) + text(s.from.y) + text(s.to.x) + text(s.to.y) +
                       text(s.width) + s.colour + (s.dashed ? " dashed" : ""),
                   std::max(s.from.y, s.to.y)});
  }
  for (const oracle::Label& l : page.labels) {
    ink.push_back({"text " + text(l.at.x) + text(l.at.y) + l.text, l.at.y});
  }
  std::sort(ink.begin(), ink.end());
  return ink;
}

std::string overlaid_double_mat(const std::string& folder) {
  return template_of(oracle::gallery("double-mat.xml"),
                     oracle::scratch_folder(folder) + "/overlaid.pdf", {"--overlaid"});
}

bool shows_cuts(const DrawnPage& page, const BoardCuts& layer, const BoardBehind& board) {
  return shows_straight_cuts(page, board, layer.windows().at(0).back, layer.over_cut);
}

}  // namespace

TEST_CASE("a template's layers have the names of what they hold, and qpdf finds nothing wrong") {
  const std::string pdf = overlaid_double_mat("layer-names");
  const std::vector<std::string> names = oracle::pdf_layers(pdf);
  for (const std::string layer : {"Layer 1: ", "Layer 2: "}) {
    for (const char* part : {"face edges", "outer edge", "cut lines"}) {
      INFO(layer << part);
      CHECK(std::count(names.begin(), names.end(), layer + part) == 1);
    }
  }
  CHECK(std::count(names.begin(), names.end(), "Dimensions") == 1);
  // Where layers are overlaid the waste is hatched once; nothing is listed that holds nothing.
  CHECK(std::count(names.begin(), names.end(), "Layer 2: hatching of the waste") == 1);
  CHECK(std::count(names.begin(), names.end(), "Layer 1: hatching of the waste") == 0);
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
}

TEST_CASE("a layer switched off takes its own ink along and no other, to MuPDF and to Poppler") {
  const std::string pdf = overlaid_double_mat("layer-off");
  for (const Reader reader : {Reader::mupdf, Reader::poppler}) {
    const std::vector<Ink> all = ink_of(oracle::drawn_pages(pdf, reader).at(0));
    std::vector<Ink> hidden;
    for (const std::string& name : oracle::pdf_layers(pdf)) {
      INFO(name);
      const std::string without = oracle::without_layer(pdf, name);
      CHECK(oracle::run({"qpdf", "--check", without}).status == 0);
      const std::vector<Ink> rest = ink_of(oracle::drawn_pages(without, reader).at(0));
      CHECK(rest.size() < all.size());
      CHECK(std::includes(all.begin(), all.end(), rest.begin(), rest.end()));
      std::set_difference(all.begin(), all.end(), rest.begin(), rest.end(),
                          std::back_inserter(hidden));
    }
    // Layer by layer, nothing was hidden twice; what is left is the page's heading.
    std::sort(hidden.begin(), hidden.end());
    std::vector<Ink> always;
    CHECK(std::includes(all.begin(), all.end(), hidden.begin(), hidden.end()));
    std::set_difference(all.begin(), all.end(), hidden.begin(), hidden.end(),
                        std::back_inserter(always));
    CHECK_FALSE(always.empty());
    for (const Ink& ink : always) CHECK(ink.lowest < 2 * 72);  // above the board
  }
}

TEST_CASE("the cut lines of one layer can be hidden without those of the other") {
  const std::string pdf = overlaid_double_mat("layer-cuts");
  const Mat mat = mat_of(oracle::gallery("double-mat.xml"));
  const Cuts cuts = cuts_of(mat);
  const BoardCuts &top = cuts.layers.at(0), &under = cuts.layers.at(1);
  const DrawnPage all = oracle::drawn_pages(pdf).at(0);
  const BoardBehind board(all, top);
  REQUIRE(shows_cuts(all, top, board));
  REQUIRE(shows_cuts(all, under, board));
  const DrawnPage rest =
      oracle::drawn_pages(oracle::without_layer(pdf, "Layer 2: cut lines")).at(0);
  CHECK(shows_cuts(rest, top, board));
  CHECK_FALSE(shows_cuts(rest, under, board));
}

TEST_CASE("one switch hides a layer on every sheet of a tiled template") {
  const std::string job = oracle::gallery("title-and-three.xml");
  const std::string pdf =
      template_of(job, oracle::scratch_folder("layer-tiled") + "/tiled.pdf", {"--paper", "letter"});
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const BoardCuts& layer = cuts.layers.at(0);
  const DrawnPage rest =
      oracle::join_sheets(oracle::drawn_pages(oracle::without_layer(pdf, "Layer 1: cut lines")))
          .at(0)
          .whole;
  const BoardBehind board(rest, layer);
  for (const Window& window : layer.windows()) {
    CHECK_FALSE(shows_straight_cuts(rest, board, window.back, layer.over_cut));
  }
  CHECK_THROWS_AS(oracle::without_layer(pdf, "Layer 7: cut lines"), std::runtime_error);
}
