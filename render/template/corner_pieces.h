#pragma once

// Where the small pieces of a template lie that shows its corners alone.

#include <string>
#include <vector>

#include "render/template/board_drawing.h"

namespace mullion {

struct CornerPiece {
  std::string name;  // "3b", "3b/2" where layers are overlaid: opening, corner, layer
  Rect rect;         // on the board, seen from behind
};

// The edge of the first layer's blank, seen from behind: pieces are located from its left and
// its top.
Rect located_from(const BoardView& view);

// 2 in or 50 mm.
Length corner_piece_side(const Scale& scale);

// Squares of that size around every corner of an opening or of a V-groove ("V1a"), every place
// where a straight edge becomes a curve, and the outermost points of curves. Their edges lie at
// whole half inches or centimetres from the board's edges, so that a rule finds them. What a piece
// of the same opening shows already gets no other.
std::vector<CornerPiece> corner_pieces(const BoardView& view);

}  // namespace mullion
