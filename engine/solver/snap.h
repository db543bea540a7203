#pragma once

// The best solution of a system of rules in which measures are whole multiples of a step.

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

// `exact` is the system's solution. Throws std::invalid_argument unless step > 0.
tl::expected<Snapped, Conflict> snap(const System& system, const Solution& exact,
                                     const std::vector<Measure>& measures, const Rational& step);

}  // namespace mullion::solver
