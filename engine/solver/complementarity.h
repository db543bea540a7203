#pragma once

// Which inequalities press, and how hard: a linear complementarity problem.
//
// Finds multipliers u and free z with
//   w = M u + B z + q,  0 = B' u,  u >= 0,  w >= 0,  u_i w_i = 0,
// where M is symmetric and positive semidefinite wherever B' u = 0. These are the optimality
// conditions of a convex quadratic programme in the multipliers of its inequalities.
//
// Method: z is pivoted out against inequalities that then press; the rest is the least-index
// criss-cross method, which needs neither a feasible start nor a rule against cycling: E. Klafszky
// and T. Terlaky, "Some generalizations of the criss-cross method for quadratic programming",
// Optimization 24, 1992; D. den Hertog, C. Roos and T. Terlaky, "The linear complementarity
// problem, sufficient matrices, and the criss-cross method", Linear Algebra and its Applications
// 187, 1993.

#include <optional>
#include <vector>

#include "engine/solver/rational.h"

namespace mullion::solver {

using Matrix = std::vector<std::vector<Rational>>;  // by row

// u, or nothing where no u and z meet all conditions. `b` has one row per inequality.
std::optional<std::vector<Rational>> solve_complementarity(Matrix m, const Matrix& b,
                                                           std::vector<Rational> q);

}  // namespace mullion::solver
