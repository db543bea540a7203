#pragma once

// The arithmetic of a conflict: which equations cancel the variables of a combination.

#include <utility>
#include <vector>

#include "engine/solver/solve.h"

namespace mullion::solver {

struct Combination {
  std::vector<Conflict::Part> parts;
  Rational constant;  // of target + sum of multiplier * equation
};

// `equations` (number, form) are independent, and some sum of them cancels `target`'s variables;
// so that sum is the only one.
Combination combine_to_constant(const std::vector<std::pair<int, Linear>>& equations,
                                const Linear& target);

// Parts sorted by constraint, whole multipliers without a common divisor, a positive shortfall.
Conflict tidy_conflict(std::vector<Conflict::Part> parts, Rational shortfall);

}  // namespace mullion::solver
