#pragma once

// One level of preferences: least weighted squares over what the levels above left free.

#include <vector>

#include "engine/solver/elimination.h"

namespace mullion::solver {

struct Preference {
  Linear form;  // wanted to be zero
  Rational weight = 1;
};

// Adds to `space` the equations that make the preferences' violations what they are at the optimum.
// `inequalities` (each form at least zero) hold throughout; `point` satisfies them and `space` when
// the function is called, and afterwards too, and then is an optimum. Where there are no
// inequalities `point` is not looked at.
//
// Active-set method for convex quadratic programmes (J. Nocedal and S. J. Wright, "Numerical
// Optimization", ch. 16), in exact arithmetic.
void optimise_level(Elimination& space, const std::vector<Preference>& preferences,
                    const std::vector<Linear>& inequalities, std::vector<Rational>& point);

}  // namespace mullion::solver
