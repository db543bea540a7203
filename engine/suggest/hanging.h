#pragma once

// How a block hangs on a board: its gaps are widened until rows and columns end on common lines,
// and its borders are alike.
//
// Every row within a column is made as wide as the column, every column within a row as high as the
// row, by its gaps alone; gaps of one row or column differ by one increment at most. Pictures of
// the outermost rows and columns may stand on the block's outer edges in place of centred ones. Of
// several borders that a given board allows, and of gaps that are wider throughout where the board
// is large, those with the best score are taken; the block as it was, with equal gaps, is looked at
// too. A row that would need gaps wider than `widest_gap` times the least ones stays narrower.

#include "engine/suggest/ranking.h"

namespace mullion::suggest {

inline constexpr std::int64_t widest_gap = 2;  // our own figure

struct Hanging {
  Length gap;     // the least one
  Length border;  // the least one
  Length increment;
  std::size_t items = 0;
};

// The block with gaps so that it takes that room, or as much of it as its gaps may.
Block stretched(const Block& block, const Hanging& hanging, Length width, Length height,
                bool to_outer_edges);

// On the smallest board that takes it. Nothing where none does, or no way scores `least`.
std::optional<Ranked> hung(const Block& block, const Boards& boards, const Hanging& hanging,
                           double least = 0);

// A quicker look for a search: the score of few of the ways.
std::optional<double> hung_score(const Block& block, const Boards& boards, const Hanging& hanging,
                                 double least);

}  // namespace mullion::suggest
