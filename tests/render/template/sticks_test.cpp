// Marking sticks and light, measured in the file.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/template/template.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using oracle::DrawnPage;

namespace {

// A piece as it is drawn: its rectangle, and its ticks from the lower edge.
struct Piece {
  double left = 0, right = 0, top = 0, bottom = 0;
  std::vector<double> ticks, joins;
  std::string words;
};

bool upright(const oracle::Stroke& stroke) {
  return std::abs(stroke.from.x - stroke.to.x) < 0.01;
}

std::vector<Piece> pieces_on(const DrawnPage& page) {
  std::vector<Piece> pieces;
  // Pairs of equal level lines, one above the other, of the sticks' pen.
  std::vector<oracle::Stroke> level;
  for (const oracle::Stroke& s : page.strokes) {
    if (!upright(s) && std::abs(s.from.y - s.to.y) < 0.01 && std::abs(s.width - 0.5) < 0.01) {
      level.push_back(s);
    }
  }
  for (std::size_t i = 0; i + 1 < level.size(); i += 2) {
    Piece piece;
    piece.left = std::min(level[i].from.x, level[i].to.x);
    piece.right = std::max(level[i].from.x, level[i].to.x);
    piece.top = std::min(level[i].from.y, level[i + 1].from.y);
    piece.bottom = std::max(level[i].from.y, level[i + 1].from.y);
    for (const oracle::Stroke& s : page.strokes) {
      const double low = std::max(s.from.y, s.to.y), high = std::min(s.from.y, s.to.y);
      if (!upright(s) || std::abs(low - piece.bottom) > 0.01) continue;
      if (s.dashed) {
        piece.joins.push_back(s.from.x);
      } else if (low - high < 20 && low - high > 10) {
        piece.ticks.push_back(s.from.x);
      }
    }
    for (const oracle::Label& label : page.labels) {
      if (label.at.y > piece.top && label.at.y < piece.bottom) piece.words += label.text + "\n";
    }
    std::sort(piece.joins.begin(), piece.joins.end());
    pieces.push_back(piece);
  }
  return pieces;
}

// All the ticks of a stick whose pieces are laid join on join, from its start.
std::vector<double> laid(const std::vector<Piece>& pieces) {
  std::vector<double> places;
  double start = 0;  // where the piece's left end lies along the stick
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    if (i > 0) start += pieces[i - 1].joins.back() - pieces[i - 1].left;
    for (const double tick : piece.ticks) places.push_back(start + tick - piece.left);
  }
  std::sort(places.begin(), places.end());
  std::vector<double> once;
  for (const double place : places) {
    if (once.empty() || place - once.back() > 0.05) once.push_back(place);
  }
  return once;
}

std::vector<double> planned(const BoardCuts& board, const Mat& mat, bool across) {
  std::vector<double> places;
  const Rect blank = mirrored(board.blank, mat.outer.width());
  for (const Window& window : board.windows()) {
    const Rect box = mirrored(window.back, mat.outer.width());
    places.push_back(to_points(across ? box.left - blank.left : box.top - blank.top));
    places.push_back(to_points(across ? box.right - blank.left : box.bottom - blank.top));
  }
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  return places;
}

}  // namespace

TEST_CASE("marking sticks have every line of every layer at its distance, on few sheets") {
  const std::string folder = oracle::scratch_folder("sticks");
  for (const char* name : {"double-mat.xml", "seven-picture-collage.xml", "title-and-three.xml"}) {
    INFO(name);
    const std::string job = oracle::gallery(name);
    const Mat mat = made::mat_of(job);
    const Cuts cuts = cuts_of(mat);
    std::vector<Piece> pieces;
    const auto pages =
        oracle::drawn_pages(made::template_of(job, folder + "/sticks.pdf", {"--sticks"}));
    for (const DrawnPage& page : pages) {
      for (const Piece& piece : pieces_on(page)) pieces.push_back(piece);
    }
    const auto sheets = oracle::drawn_pages(
        made::template_of(job, folder + "/sheets.pdf", {"--paper", "letter", "--by-layer"}));
    CHECK(pages.size() <= 2 * cuts.layers.size());
    CHECK(2 * pages.size() < sheets.size());
    std::size_t at = 0;
    for (const BoardCuts& board : cuts.layers) {
      for (const bool across : {true, false}) {
        std::vector<Piece> stick;
        do {
          REQUIRE(at < pieces.size());
          stick.push_back(pieces[at++]);
        } while (stick.back().words.find(across ? "right edge" : "bottom edge") ==
                 std::string::npos);
        const std::vector<double> found = laid(stick), wanted = planned(board, mat, across);
        REQUIRE(found.size() == wanted.size());
        for (std::size_t i = 0; i < found.size(); ++i) {
          CHECK(found[i] == Approx(wanted[i]).margin(0.03));
        }
      }
    }
    CHECK(at == pieces.size());
  }
}

TEST_CASE("light shows each layer's cuts at full size on black, with a square and its measures") {
  const std::string folder = oracle::scratch_folder("light");
  const std::string job = oracle::gallery("double-mat.xml");
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const auto pages =
      oracle::drawn_pages(made::template_of(job, folder + "/light.pdf", {"--light"}));
  REQUIRE(pages.size() == 2);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    CHECK(made::missing_lines(pages[i], cuts.layers[i]) == "");
    // 3, 4, 5: the largest in 16 x 14 in, and in the under-mat's 15 3/4 x 13 3/4 in.
    const int unit = i == 0 ? 4 : 3;
    const std::string sides = std::to_string(4 * unit) + " in by " + std::to_string(3 * unit) +
                              " in, its diagonal " + std::to_string(5 * unit) + " in";
    CHECK(oracle::text_of(pages[i]).find("this rectangle is " + sides) != std::string::npos);
    CHECK(oracle::find_rectangle(pages[i], 4 * unit * 72, 3 * unit * 72, 0.03));
    const std::vector<oracle::Spot>& ground = pages[i].fills.front();
    CHECK(std::any_of(ground.begin(), ground.end(), [&](const oracle::Spot& corner) {
      return corner.x == Approx(pages[i].width) && corner.y == Approx(pages[i].height);
    }));
  }
}
