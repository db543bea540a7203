#pragma once

// Brings a solution to sizes that are read off the rule, and tells what that moved.

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
  Problems notes;
};

Snapping snap_to_increment(const Job& job, const Model& model, const solver::Solution& exact);

}  // namespace mullion::layout
