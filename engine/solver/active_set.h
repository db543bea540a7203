#pragma once

// Least squares under inequalities by guessing which of them press.
//
// Where the guess is right the optimum follows from sparse equations, and the signs of what it
// leaves over prove it. Where it is wrong, all that have the wrong sign change sides at once (and
// those that exclude each other where the optimum leaves variables free): block
// principal pivoting, J. J. Judice and F. M. Pires, "A block principal pivoting algorithm for
// large-scale strictly monotone linear complementarity problems", Computers and Operations Research
// 21(5), 1994. That is quick where many press, but it may go round in circles; then it gives up.

#include <optional>

#include "engine/solver/block.h"

namespace mullion::solver {

// How hard each inequality presses (the multipliers of the optimality conditions), those of
// `at_least` first, and the values of the forms to be zero.
struct Pressure {
  std::vector<Rational> zero;
  std::vector<Rational> multipliers;
};

// Nothing where it gave up.
std::optional<Pressure> guess_pressure(const Block& block);

}  // namespace mullion::solver
