#pragma once

// Why required rules cannot hold together.

#include <vector>

#include "engine/solver/solve.h"

namespace mullion::solver {

// `suspects` are numbers of required constraints of the system that cannot hold together. Returns a
// smallest conflict among them. Among several it is chosen by what the rules say (their terms,
// their relation, their number), so the order of rules that differ does not matter.
//
// The search is QuickXplain: U. Junker, "QuickXplain: preferred explanations and relaxations for
// over-constrained problems", AAAI 2004. The multipliers of a smallest conflict are unique up to a
// factor (J. Gleeson and J. Ryan, "Identifying minimally infeasible subsystems of inequalities",
// ORSA Journal on Computing 2, 1990).
Conflict find_conflict(const System& system, std::vector<int> suspects);

}  // namespace mullion::solver
