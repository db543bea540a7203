#pragma once

// How the board lies, with a box to tick for every cut that is made so.

#include "render/cutsheet/board_diagram.h"
#include "render/cutsheet/tiles.h"

namespace mullion::cutsheet {

// The tiles of a set-up, one for each way the board lies.
std::vector<Tile> placement_tiles(const BoardPicture& board, const SetUp& set_up, const Look& look,
                                  double width);

}  // namespace mullion::cutsheet
