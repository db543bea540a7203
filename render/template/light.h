#pragma once

// Light on the board: the back of a board as a projector throws it onto the board itself, light
// lines on black. A grid of whole inches or of 20 mm from the board's corner shows where the
// picture is out of square; a rectangle whose sides and diagonals are told sets its size.

#include "render/template/pages.h"

namespace mullion {

SheetPage light_page(const BoardView& view);

}  // namespace mullion
