// Where joins and their marks lie on the board, measured after the sheets were put together.

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/oracle/joined_sheets.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;
using oracle::DrawnPage;
using oracle::JoinedSheets;
using oracle::Spot;

namespace {

constexpr double mm = 72 / 25.4;

struct Corners {
  Spot upper_left, lower_right;  // of a window's back edge, on the page
  bool straight = false;         // its cuts run along these sides
};

std::vector<Corners> windows_of(const DrawnPage& whole, const BoardCuts& layer) {
  const BoardBehind board(whole, layer);
  std::vector<Corners> windows;
  for (const Window& window : layer.windows()) {
    windows.push_back({board.place(window.back.right, window.back.top),
                       board.place(window.back.left, window.back.bottom),
                       window.shape.kind == ShapeKind::rectangle});
  }
  return windows;
}

// Whether a cut along a side of the window runs through the box of that reach around the mark.
bool cut_runs_through(const Corners& window, Spot mark, double reach) {
  const auto [left, top] = window.upper_left;
  const auto [right, bottom] = window.lower_right;
  const std::vector<oracle::Stroke> sides{{{left, top}, {right, top}, 0, false, ""},
                                          {{left, bottom}, {right, bottom}, 0, false, ""},
                                          {{left, top}, {left, bottom}, 0, false, ""},
                                          {{right, top}, {right, bottom}, 0, false, ""}};
  for (oracle::Stroke side : sides) {
    if (oracle::clip_to_box(side, {mark.x - reach, mark.y - reach},
                            {mark.x + reach, mark.y + reach})) {
      return true;
    }
  }
  return false;
}

// Calls check(whole board, layer, text of all pages) for every layer of every job on Letter sheets.
template <class Check>
void for_each_board(const std::string& folder, const Check& check) {
  for (const std::string& job : all_jobs()) {
    const Mat mat = mat_of(job);
    const Cuts cuts = cuts_of(mat);
    const std::string pdf =
        template_of(job, oracle::scratch_folder(folder) + "/t.pdf", {"--paper", "letter"});
    const std::vector<DrawnPage> pages = oracle::drawn_pages(pdf);
    const std::vector<JoinedSheets> boards = oracle::join_sheets(pages);
    std::string text;
    for (const DrawnPage& page : pages) text += oracle::text_of(page);
    for (std::size_t i = 0; i < boards.size(); ++i) {
      INFO(job << ", layer " << i + 1);
      check(boards[i], cuts.layers.at(i), text);
    }
  }
}

}  // namespace

TEST_CASE("joins lie clear of corners and their marks of cuts, or the overview speaks of it") {
  std::size_t marks = 0;
  for_each_board("joins-clear",
                 [&](const JoinedSheets& board, const BoardCuts& layer, const std::string& text) {
                   if (text.find("runs close by the corner") != std::string::npos) return;
                   marks += board.marks.size();
                   for (const Corners& window : windows_of(board.whole, layer)) {
                     for (const double x : board.joins_x) {
                       CHECK(std::abs(x - window.upper_left.x) >= 4 * mm);
                       CHECK(std::abs(x - window.lower_right.x) >= 4 * mm);
                     }
                     for (const double y : board.joins_y) {
                       CHECK(std::abs(y - window.upper_left.y) >= 4 * mm);
                       CHECK(std::abs(y - window.lower_right.y) >= 4 * mm);
                     }
                     for (const Spot mark : board.marks) {
                       INFO("mark at " << mark.x << ", " << mark.y);
                       CHECK_FALSE((window.straight && cut_runs_through(window, mark, 9)));
                     }
                   }
                 });
  CHECK(marks > 100);
}
