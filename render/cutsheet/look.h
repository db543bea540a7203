#pragma once

// Sizes of type and diagrams on a sheet, in points. Everything grows with `size`, but no type is
// smaller than can be read at arm's length.

#include <algorithm>

#include "engine/xml/colour.h"

namespace mullion::cutsheet {

inline constexpr Colour white{0xff, 0xff, 0xff};

struct Look {
  double size = 1;
  int columns = 3;  // of tiles
  // Size of a diagram where the layer above was cut the same way, by its size there; 0: none.
  double again = 1;

  double title() const { return 15 * size; }
  // Many set-ups: small tiles, each with its settings above its diagram. No type is below 7.
  bool dense = false;

  double value() const { return dense ? 11 : std::max(21 * size, 17.0); }  // what a scale shows
  double text() const { return dense ? 7.8 : std::max(11 * size, 9.5); }
  double small() const { return dense ? 7.2 : std::max(9.5 * size, 8.5); }
  double bar() const { return 17 * size; }
  double diagram() const { return 100 * size; }
};

}  // namespace mullion::cutsheet
