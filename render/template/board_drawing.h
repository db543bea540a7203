#pragma once

// The back of a board as a drawing, at 1:1 or at any other scale.
//
// The origin is the upper left corner of the mat as seen from behind; units are points. Pens and
// letters keep their size at every scale. What is cut, and how far past its corners, is told by
// engine/cuts/cuts.h.

#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/job/job.h"
#include "engine/locale/locale.h"
#include "render/paper/drawing.h"

namespace mullion {

struct BoardView {
  const Job* job = nullptr;
  const Cuts* cuts = nullptr;
  std::vector<const BoardCuts*> layers;  // one, or several overlaid, top to bottom
  double scale = 1;
  Locale locale{};

  Length width() const { return cuts->mat->outer.width(); }
  // Those of the top mat, where it is among the layers.
  const BoardCuts* grooves() const {
    return cuts->grooves && layers.front()->layer->number == 1 ? &*cuts->grooves : nullptr;
  }
};

// Groups outer-edge, hatching, face-edges, cut-lines, grooves and labels for each layer.
paper::Drawing draw_board(const BoardView& view);

// The openings that the window shows: "3", or "3, 4" where they share it.
std::string numbers_of(const Window& window, const char* between = ", ");

// Where the window's number stands: in the middle of its box, or, where that is board, of the
// largest rectangle inside it.
paper::Spot label_spot(const Window& window, const BoardView& view);

// Running dimensions around the first layer's blank, from each of its edges; those of V-grooves say
// so. An edge with more lines than its margin can hold has none: `complete`, where it is given,
// says whether all have them.
paper::Drawing draw_board_dimensions(const BoardView& view, bool* complete = nullptr);

// "Layer 2 of 3: Under-mat"; what a layer is called on every sheet and bookmark.
std::string layer_title(const BoardView& view, const BoardCuts& board);

// That of the only layer, or "All layers".
std::string title_of(const BoardView& view);

// The pen that draws a layer's cut lines: black for a layer alone; where overlaid, a colour each,
// and wider for each layer below, so that they are told apart without colour.
paper::Pen cut_pen_of(const BoardView& view, std::size_t index);

}  // namespace mullion
