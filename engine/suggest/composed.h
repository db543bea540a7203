#pragma once

// Arrangements that rows and columns do not give, each as it hangs on a board with even borders:
//
// - a ring or an oval around the largest picture, or around one of several of one size, or around
//   nothing: its pictures stand in mirrored pairs;
// - a pinwheel: two lying and two upright pictures around the rest, flush on all four sides;
// - staggered columns or rows of pictures of one size: every other one has one picture less, or
//   begins half a picture further on; long low pictures begin left and end right in turn;
// - rows on baselines: pictures of different heights stand on one line;
// - a title below: the one long low picture below all others.

#include "engine/suggest/hanging.h"

namespace mullion::suggest {

// The best of each kind on the boards, or on the least board of its own where any may be had. All
// gaps are at least the least one; where the board leaves room they are wider.
std::vector<Ranked> composed(const std::vector<Block>& pictures, const Boards& boards,
                             const Hanging& hanging);

// Blocks to be hung as all others are: the title below, and what may stand above it.
std::vector<Block> titles_below(const std::vector<Block>& pictures, Length gap);

}  // namespace mullion::suggest
