#pragma once

// The best solution of a system of rules in which measures are whole multiples of a step.
//
// Required rules hold exactly. Then the levels of preference count as they do in solve.h: the
// weighted sum of squared violations is least, level by level. Among equals, rank by rank from the
// lowest, the largest distance of a measure from its exact value is least, then the next largest,
// and so on; so a remainder ends up in the measures of the highest rank. Variables that no measure
// depends on follow exactly. Where the exact values are multiples already nothing moves.
//
// A measure that cannot be a multiple together with those before it (by rank, then in the order
// given) is let off: it takes what remains, and the sums still close. Where inequalities leave no
// point at all, the first measure after which there is none is let off too; after eight of those,
// or at once where there are more than 300 measures, those of the highest rank are, then those of
// the next.
//
// What is left to choose falls apart into parts that share no variable; parts of at most eight free
// variables are searched exactly within a bound on the work, and `proved` says that all were. For
// larger ones the result is a good one that satisfies all required rules (rounding.h). The result
// does not depend on the order of the rules.

#include <tl/expected.hpp>
#include <vector>

#include "engine/solver/solve.h"

namespace mullion::solver {

// What is read off a rule. A measure of a lower rank stays nearer to its exact value.
struct Measure {
  Linear form;
  int rank = 0;
};

struct Snapped {
  std::vector<Rational> values;  // by variable
  std::vector<Rational> moved;   // by measure: snapped - exact
  bool proved = false;           // no better solution exists
};

// `exact` is the system's solution. The error is the system's conflict, where it has no solution at
// all. Throws std::invalid_argument unless step > 0 and `exact` satisfies the required rules.
tl::expected<Snapped, Conflict> snap(const System& system, const Solution& exact,
                                     const std::vector<Measure>& measures, const Rational& step);

}  // namespace mullion::solver
