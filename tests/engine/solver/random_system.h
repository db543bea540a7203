#pragma once

// Small random systems of the kind that layouts are: positions along an axis, a few terms a rule.

#include <random>

#include "engine/solver/solve.h"

namespace test {

struct Shape {
  int variables = 6;
  int equations = 3;
  int inequalities = 5;
  int preferences = 6;
  int levels = 3;
};

// Two to four terms with small whole coefficients, and a constant.
mullion::solver::Linear random_form(std::mt19937& random, int variables);

mullion::solver::System random_system(std::mt19937& random, const Shape& shape);

// The same rules in another order.
mullion::solver::System shuffled(const mullion::solver::System& system, std::mt19937& random);

}  // namespace test
