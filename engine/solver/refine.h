#pragma once

// From a rounded point to the best one.

#include "engine/solver/grid_search.h"
#include "engine/solver/rounding.h"

namespace mullion::solver {

// What is left to choose after the settled levels, over the free variables of `rounded.start`,
// falls apart into parts that share none; each is searched. `rounded` without values starts from
// nothing. The result's values are by variable of the lattice's space, or empty where none were
// found.
GridOptimum refine(const Rules& rules, const std::vector<GridMeasure>& measures,
                   const Rounded& rounded);

}  // namespace mullion::solver
