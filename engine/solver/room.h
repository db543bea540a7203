#pragma once

// Rounding with an eye on the room that inequalities leave.

#include <optional>
#include <vector>

#include "engine/solver/lattice.h"
#include "engine/solver/level.h"

namespace mullion::solver {

// Holds a block's equations one by one, each at the value nearest to zero after which those that
// follow find room too. A block that is not independent is left at the first value that is not
// zero, since what follows has another optimum then. Whether there is room for the forms of
// `required` is told as far as one variable at a time can tell it.
//
// True where all are held at zero. Nothing where no such values were found within a bound on the
// work; the lattice is as it was then.
std::optional<bool> hold_leaving_room(Lattice& lattice, const LevelOptimum::Block& block,
                                      const std::vector<Linear>& required);

}  // namespace mullion::solver
