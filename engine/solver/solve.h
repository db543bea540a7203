#pragma once

// The best solution of a system of rules, or the reason why there is none.
//
// Required rules hold exactly. Then, level by level, the sum over the level's rules of
// weight * violation^2 is made as small as it can be without giving up anything at the levels
// above; squares spread a shortfall evenly and make every violation unique. What freedom is left
// after the last level goes by one rule: the sum of the squares of all variables is least. So there
// is exactly one solution, whatever the order of the variables and the rules, and it is exact: no
// floating point, no tolerance.

#include <tl/expected.hpp>
#include <vector>

#include "engine/solver/system.h"

namespace mullion::solver {

struct Solution {
  std::vector<Rational> values;  // by variable
  // Numbers of the inequalities that had to be looked at, rising: a hint for the next system.
  std::vector<int> looked_at = {};
  Rational value(const Linear& form) const { return evaluate(form, values); }
};

// A smallest set of required rules that cannot hold together: without any one of them the rest can.
// The sum of multiplier * form over the parts has no variables left; its constant is `-shortfall`,
// which would have to be at least zero. Multipliers are whole numbers without a common divisor,
// positive for `at_least`, negative for `at_most`, of either sign for `equal` (Farkas' lemma).
struct Conflict {
  struct Part {
    int constraint;  // its number in the system
    Rational multiplier;
  };
  std::vector<Part> parts;  // by rising number
  Rational shortfall;       // > 0
};

// `look_at` are numbers of constraints that may matter, such as those that mattered in a system of
// which a few numbers were changed since. They save time where they do and cost some where they do
// not; the result is the same.
tl::expected<Solution, Conflict> solve(const System& system, const std::vector<int>& look_at = {});

}  // namespace mullion::solver
