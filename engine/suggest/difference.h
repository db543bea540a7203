#pragma once

// When two suggestions are different.
//
// They have another plan: not the same pictures in the same rows of columns of rows, whatever the
// sequence in which each row and column has them, and whichever of several pictures of one size
// stands where. And they look different: with both made the same size and laid on one another
// centre to centre, in the best of four ways (as they are, mirrored left to right, top to bottom,
// or both), less than `alike_enough` of the openings' area coincides.

#include <string>
#include <vector>

#include "engine/suggest/criteria.h"

namespace mullion::suggest {

inline constexpr double alike_enough = 0.78;  // our own figure

std::string plan_key(const Block& block);

// The openings that coincide, from 0 to 1, as a share of the greater of their two areas.
double coincidence(const std::vector<Rect>& a, const Board& a_board, const std::vector<Rect>& b,
                   const Board& b_board);

}  // namespace mullion::suggest
