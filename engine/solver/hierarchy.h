#pragma once

// All levels of one component, one after the other.

#include <tl/expected.hpp>
#include <vector>

#include "engine/solver/rules.h"

namespace mullion::solver {

struct Optimum {
  std::vector<Rational> values;      // by variable of the space
  std::vector<std::size_t> working;  // the inequalities that had to be looked at
};

// The best point of a space that satisfies the rules' required inequalities, level by level, and
// then the one with the least sum of squares of the rules' variables. The space holds the rules'
// equations already. The error is the working set that cannot hold.
//
// Inequalities enter a working set when a best point without them breaks them. That point is unique
// at every step, so the working set does not depend on any order.
tl::expected<Optimum, std::vector<std::size_t>> optimise(Elimination space, const Rules& rules,
                                                         std::vector<std::size_t> working = {});

}  // namespace mullion::solver
