#pragma once

// Beside each cut line its distance from the edge of the board that a rule would be laid at, the
// nearer one, with an arrow to it: "\u2191 2 13/16". It stands in the waste; where layers are
// overlaid, that of an upper layer on the board's side, and says whose it is.

#include <vector>

#include "render/template/board_drawing.h"

namespace mullion {

struct LineDistance {
  paper::Text text;
  paper::Spot baseline;
  paper::Box box;  // of its letters
};

// Of the window's straight level sides that are long enough, at full scale, where the distance
// covers nothing of `taken`. `index` is the layer's place among those of the view.
std::vector<LineDistance> line_distances(const Window& window, const BoardView& view,
                                         std::size_t index, const std::vector<paper::Box>& taken);

}  // namespace mullion
