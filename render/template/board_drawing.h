#pragma once

// The back of a board as a drawing, at 1:1 or at any other scale.
//
// The origin is the upper left corner of the mat as seen from behind; units are points. Pens and
// letters keep their size at every scale. At 1:1 cut lines run past their corners by the over-cut.

#include <vector>

#include "engine/job/job.h"
#include "engine/locale/locale.h"
#include "engine/mat/mat.h"
#include "render/paper/drawing.h"

namespace mullion {

struct BoardView {
  const Job* job = nullptr;
  const Mat* mat = nullptr;
  std::vector<const MatLayer*> layers;  // one, or several overlaid, top to bottom
  double scale = 1;
  Locale locale{};
};

// Groups outer-edge, hatching, face-edges, cut-lines and marks for each layer.
paper::Drawing draw_board(const BoardView& view);

// Where the window's number stands: in the middle of its box, or, where that is board, of the
// largest rectangle inside it.
paper::Spot label_spot(const Window& window, const BoardView& view);

// Running dimensions around the board, from each of its edges.
paper::Drawing draw_board_dimensions(const BoardView& view);

// "Layer 2 of 3: Under-mat"; what a layer is called on every sheet and bookmark.
std::string layer_title(const MatLayer& layer, const Mat& mat, const Locale& locale);

// That of the only layer, or "All layers".
std::string title_of(const BoardView& view);

// The pen that draws a layer's cut lines: black for a layer alone, a colour each where overlaid.
paper::Pen cut_pen_of(const BoardView& view, std::size_t index);

}  // namespace mullion
