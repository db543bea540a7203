#pragma once

// The blanks that jobs call for, and the fallouts that their openings leave.
//
// Exact lengths. A blank is one board of one layer of one mat. A fallout is what drops out of an
// opening; it has a bevel all around, so what can be used of it is the largest rectangle in its
// smaller face (the opening's back edge), less a margin that is cut off square.

#include <string>
#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/sheets/stock/board.h"

namespace mullion {

struct Fallout {
  Length width, height;  // that can be used
  int opening = 0;       // number of the first opening of its window
  bool square = true;    // a rectangle all its own, of which nothing but the margin is cut off
};

struct BlankOrder {
  std::string order;  // the job's reference
  std::string layer;
  int layer_number = 0;  // from 1, top to bottom
  Board board;
  Length width, height;
  bool grain = false;             // may not be turned
  int quantity = 1;               // of mats
  std::vector<Fallout> fallouts;  // of each blank
};

// Cut off each side of a fallout besides the bevel. Common practice, no source: a clean edge.
inline constexpr Length fallout_margin = sixty_fourths(4);

// One line for each layer, top to bottom, with the fallouts of its windows of whatever shape.
std::vector<BlankOrder> blanks_of(const Cuts& cuts, int quantity, const std::string& order);

}  // namespace mullion
