#pragma once

// GLPK, an independent linear-programming code, asked whether a solution of the solver is optimal.

#include <string>

#include "engine/solver/solve.h"

namespace oracle {

bool is_feasible(const mullion::solver::System& system);

// Least squares are convex: a feasible point is optimal if and only if no feasible point makes the
// linearised objective smaller there (first-order condition, S. Boyd and L. Vandenberghe, "Convex
// Optimization", 4.2.3). So at every level GLPK minimises the gradient of the level's sum of
// squares at the solution, over the required rules and the violations of the levels above.
// Empty where no level can be bettered; else what GLPK found.
std::string better_than(const mullion::solver::System& system,
                        const mullion::solver::Solution& solution);

}  // namespace oracle
