#pragma once

// What makes an arrangement good, in named figures from 0 (poor) to 1 (best).

#include <array>
#include <optional>
#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

struct Board {
  Length width, height;
  Length bottom_extra = {};  // by which the bottom border is to be wider than the top one
};

struct Criteria {
  double area = 0;       // openings' area over the board's: little board for much picture
  double borders = 0;    // least border over the greatest, the bottom without its extra width
  double balance = 0;    // centre of mass of the openings near the optical centre of the board
  double alignment = 0;  // edges that lie in one line with others
  double symmetry = 0;   // openings that cover their own mirror image: by 3/4 left to right, by 1/4
                         // top to bottom
  double bars = 0;       // bars between neighbours all alike
  double flush = 0;      // outer edges of the openings that lie on the four sides of their block
  double compact = 0;    // openings' area over that of the block around them
  double proportion = 0;  // borders no less than the bars and no more than 5/2 of them; 0 from 6
  double shape = 0;       // a board that hangs well: 1 up to 3:2, 0 from 3:1
};

// Weights of our own choosing; their sum is 1. The score is the weighted sum. Little board counts
// most: with less weight on it, many pictures spread over boards that no sheet gives.
inline constexpr Criteria weights{0.09, 0.1, 0.05, 0.1, 0.09, 0.13, 0.14, 0.13, 0.09, 0.08};

// A criterion as reports, `suggest --help` and the contact sheet name it.
struct Criterion {
  const char* name;
  double Criteria::*figure;  // of its weight, too
  const char* meaning;       // what full marks are for
};

const std::array<Criterion, 10>& criteria_table();

double score(const Criteria& criteria);

// What a block of this size on the board scores at most, whatever is in it; the openings' area in
// square inches.
double best_score(double openings, Length width, Length height, const Board& board);

// Moves the openings of a block of this size, given from its upper left corner, to the middle of
// what is left above the bottom's extra width.
void centre(std::vector<Rect>& openings, Length width, Length height, const Board& board);

// The openings' rectangles on the board, centred, by item.
std::vector<Rect> on_board(const Block& block, Length gap, std::size_t items, const Board& board);

// The optical centre lies above the middle, as the construction at
// mmresourcecenter.org/matting.html has it: top border (H - h)(W + w) / 4W for a block w x h on a
// board W x H. Of a ring the circle is the line in which its openings lie, and of staggered lines the
// steps are.
Criteria judge(const Block& block, Length gap, std::size_t items, const Board& board);

// The same of openings that are on the board already and fill a block of this size; nothing where
// the score is sure to be less than `least`.
std::optional<Criteria> judge(const std::vector<Rect>& openings, Length width, Length height,
                              const Board& board, double least);

}  // namespace mullion::suggest
