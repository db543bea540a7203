#pragma once

// A length for each side of a rectangle.

#include <array>

#include "engine/length/length.h"

namespace mullion {

struct Sides {
  Length left, top, right, bottom;
  friend bool operator==(const Sides&, const Sides&) = default;
};

inline constexpr std::array<Length Sides::*, 4> every_side{&Sides::left, &Sides::top, &Sides::right,
                                                           &Sides::bottom};

}  // namespace mullion
