#pragma once

// Rules in an order that depends on what they say and not on where they stand.

#include <vector>

#include "engine/solver/system.h"

namespace mullion::solver {

// The same rule with the first variable's coefficient positive: `a == b` and `b == a` are alike.
Constraint turned_upright(Constraint constraint);

// The numbers, sorted by level, terms, constant, relation and weight of the constraints they stand
// for; then by tag, and by number.
std::vector<int> in_order_of_content(const System& system, std::vector<int> numbers);

// All rules upright, in order of content.
System in_order_of_content(const System& system);

}  // namespace mullion::solver
