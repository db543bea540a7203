#pragma once

// Whether linear inequalities can hold together: a simplex method on exact fractions.
//
// Dictionary form with bounds, as in B. Dutertre and L. de Moura, "A fast linear-arithmetic solver
// for DPLL(T)", CAV 2006; R. G. Bland's rule (Mathematics of Operations Research 2, 1977) keeps it
// from cycling. A row that shows infeasibility is a basic solution of the dual, so the inequalities
// in it are a minimal infeasible set (J. Gleeson and J. Ryan, ORSA Journal on Computing 2, 1990).

#include <tl/expected.hpp>
#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

struct InfeasibleRow {
  struct Part {
    std::size_t inequality;
    Rational multiplier;  // > 0
  };
  std::vector<Part> parts;  // their weighted sum is a negative constant
};

// A point at which every form is at least zero, starting from `start`.
tl::expected<std::vector<Rational>, InfeasibleRow> find_feasible_point(
    const std::vector<Linear>& inequalities, const std::vector<Rational>& start);

}  // namespace mullion::solver
