#pragma once

// What makes an arrangement good, in named figures from 0 (poor) to 1 (best).

#include <optional>
#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

struct Board {
  Length width, height;
};

struct Criteria {
  double area = 0;       // openings' area over the board's: little board for much picture
  double borders = 0;    // least border over the greatest
  double balance = 0;    // centre of mass of the openings near the optical centre of the board
  double alignment = 0;  // edges that lie in one line with others
  double symmetry = 0;   // openings that have a mirror image left to right
  double bars = 0;       // bars between neighbours all alike
};

// Weights of our own choosing; their sum is 1. The score is the weighted sum.
inline constexpr Criteria weights{0.25, 0.2, 0.1, 0.2, 0.1, 0.15};

double score(const Criteria& criteria);

// The openings' rectangles on the board, centred, by item.
std::vector<Rect> on_board(const Block& block, Length gap, std::size_t items, const Board& board);

// The optical centre lies above the middle, as the construction at
// mmresourcecenter.org/matting.html has it: top border (H - h)(W + w) / 4W for a block w x h on a
// board W x H.
Criteria judge(const Block& block, Length gap, std::size_t items, const Board& board);

}  // namespace mullion::suggest
