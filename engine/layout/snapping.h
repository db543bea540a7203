#pragma once

// Brings a solution to sizes that are read off the rule, and tells what that moved.
//
// Equal gaps stay equal; what does not divide goes to the bottom border, then to the right one. A
// required rule with a factor that few sizes on the rule meet, such as 1.17 times, and a bottom
// border weighted by a length or a factor are then kept to within about a step, and told. No border
// moves by more steps than there are openings, and four.

#include "engine/layout/layout.h"
#include "engine/layout/model.h"

namespace mullion::layout {

// Values by variable, whole ticks wherever an outer size, a border or an edge is read.
struct Values {
  std::vector<solver::Rational> by_variable;
  solver::Rational value(const solver::Linear& form) const {
    return solver::evaluate(form, by_variable);
  }
};

struct Snapping {
  Values values;
  OnIncrement on_increment = OnIncrement::as_it_was;
  std::vector<LayoutNote> notes;
};

Snapping snap_to_increment(const Job& job, const Model& model, const solver::Solution& exact);

}  // namespace mullion::layout
