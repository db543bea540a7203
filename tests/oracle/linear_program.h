#pragma once

// GLPK and Clp, independent linear-programming codes, asked whether a solution of the solver is
// optimal.

#include <string>

#include "engine/solver/solve.h"

namespace oracle {

enum class Code { glpk, clp };

bool is_feasible(const mullion::solver::System& system, Code code = Code::glpk);

// The same hierarchy as a chain of linear programmes, for timings: at every level the weighted sum
// of absolute violations is least, from the last level's basis, and then may not grow. False where
// a level has no optimum.
bool minimise_all_levels(const mullion::solver::System& system, Code code);

// Least squares are convex: a feasible point is optimal if and only if no feasible point makes the
// linearised objective smaller there (first-order condition, S. Boyd and L. Vandenberghe, "Convex
// Optimization", 4.2.3). So at every level the code minimises the gradient of the level's sum of
// squares at the solution, over the required rules and the violations of the levels above.
// Empty where no level can be bettered; else what it found.
std::string better_than(const mullion::solver::System& system,
                        const mullion::solver::Solution& solution, Code code = Code::glpk);

}  // namespace oracle
