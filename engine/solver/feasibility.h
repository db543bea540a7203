#pragma once

// Whether linear inequalities can hold together: a simplex method on exact fractions.
//
// Dictionary form, as in B. Dutertre and L. de Moura, "A fast linear-arithmetic solver for
// DPLL(T)", CAV 2006; R. G. Bland's rule (Mathematics of Operations Research 2, 1977) keeps it from
// cycling.

#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

// Numbers of forms without which the others can be at least zero together; empty where all can.
// They fall apart into sets of which each excludes itself, as the multipliers of a row tell
// (Farkas' lemma).
std::vector<std::size_t> excluding_each_other(const std::vector<Linear>& forms, int variable_count);

// Whether some values of the variables make every form at least zero.
bool can_be_at_least_zero(const std::vector<Linear>& forms, int variable_count);

}  // namespace mullion::solver
