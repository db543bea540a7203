#pragma once

// How the board lies, with a box to tick for every cut that is made so.

#include "render/cutsheet/board_diagram.h"
#include "render/cutsheet/tiles.h"

namespace mullion::cutsheet {

// The same in words: "Edge B at the guide, half turn", "7  opening 2, left".
std::string lying_words(const ToldPlan& plan, const Placement& placement);
std::string cut_words(const BoardPicture& board, const Placement& placement, const BevelCut& cut);

// The tiles of a set-up, one for each way the board lies.
std::vector<Tile> placement_tiles(const BoardPicture& board, const SetUp& set_up, const Look& look,
                                  double width);

}  // namespace mullion::cutsheet
