#pragma once

// What is to be done before and after the set-ups of a stage.

#include "render/cutsheet/board_diagram.h"
#include "render/cutsheet/flow.h"
#include "render/cutsheet/tiles.h"

namespace mullion::cutsheet {

// Taping, the one amount of an under-mat said once and large, and the pencil lines with the board's
// back as it looks then.
void add_before(Flow& flow, const BoardPicture& board, const Look& look);

// Taping and the lines to draw alone, every stage pictured.
void add_marks(Flow& flow, const BoardPicture& board, const Look& look);

// Curves and panels. Slanting lines are tiles.
void add_after(Flow& flow, const BoardPicture& board, const Look& look);

}  // namespace mullion::cutsheet
