#pragma once

// The board as it lies for one step, as SVG for the page: face down, seen by the operator, with
// only what is done now standing out. Classes name the parts; page.css colours them.

#include <vector>

#include "render/bench/step.h"
#include "render/cutsheet/board_view.h"

namespace mullion::bench {

using cutsheet::BoardPicture;

// The cut's line, arrow and stops.
Picture picture_of_cut(const BoardPicture& board, const Placement& placement, const BevelCut& cut,
                       const Settings& settings);
// What is there once it is cut.
Picture picture_after_cut(const BoardPicture& board, const Placement& placement,
                          const BevelCut& cut, const Settings& settings);
// A line that is drawn along the rail.
Picture picture_of_stroke(const BoardPicture& board, const MarkPlacement& placement,
                          const Settings& settings);

// With the top edge away: lines to draw, by their numbers; a slanting cut; a curve, by its index;
// everything cut.
Picture picture_of_lines(const BoardPicture& board, const std::vector<int>& lines);
Picture picture_of_skew_cut(const BoardPicture& board, const SkewCut& cut);
Picture picture_of_curve(const BoardPicture& board, std::size_t curve);
Picture picture_of_all(const BoardPicture& board);

}  // namespace mullion::bench
