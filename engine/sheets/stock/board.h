#pragma once

// What makes two pieces of board alike: the name, the colour and the thickness.
//
// A file that states no colour leaves it open: such a board is any of that name and thickness.

#include <string>

#include "engine/job/job.h"
#include "engine/locale/locale.h"

namespace mullion {

struct Board {
  std::string name;
  Colour colour;
  Length thickness;
  bool any_colour = false;  // none is stated; `colour` is then the usual one, to draw with

  friend bool operator==(const Board&, const Board&) = default;
};

// An order of boards: by name, then thickness, then colour.
bool operator<(const Board& a, const Board& b);

Board board_of(const Layer& layer);

// "Oat, #f2eee3, 1/16 in"; without the colour where none is stated.
std::string describe(const Board& board, const Scale& scale, const Locale& locale = {});

}  // namespace mullion
