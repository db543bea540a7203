#pragma once

// A point on the grid without a search, for systems that are too large for one.

#include <optional>
#include <vector>

#include "engine/solver/grid_search.h"

namespace mullion::solver {

// What the required equations leave free comes to the grid each for itself, all rounded the same
// way. Since that keeps the order of places, sums of lengths on the grid still close and no
// distance between two places becomes smaller than a required one on the grid: differences alone
// change, by less than a step. Nothing where a required inequality does not hold after it.
std::optional<std::vector<Rational>> round_positions(const Rules& rules,
                                                     const std::vector<Rational>& exact,
                                                     const std::vector<GridMeasure>& measures,
                                                     const Rational& step);

}  // namespace mullion::solver
