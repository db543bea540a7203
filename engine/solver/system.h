#pragma once

// A system of linear rules over variables, required or preferred at any number of levels.
//
// A rule reads as arithmetic: `system.add(left + width == right)` is required,
// `system.add(prefer(left == right, 1))` is wanted. Level 0 is required, level 1 is the strongest
// preference, and so on. A weight says how much a rule counts within its level. Numbers are exact;
// what they measure is the caller's affair.

#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

enum class Relation { equal, at_least, at_most };

struct Constraint {
  Linear form;
  Relation relation = Relation::equal;  // form REL 0
  int level = 0;
  Rational weight = 1;
  int tag = -1;  // the caller's own mark; the solver takes no notice of it
};

Constraint operator==(Linear left, const Linear& right);
Constraint operator>=(Linear left, const Linear& right);
Constraint operator<=(Linear left, const Linear& right);

// The same rule as a preference of a level from 1.
Constraint prefer(Constraint constraint, int level, Rational weight = 1);
Constraint tagged(Constraint constraint, int tag);

// By how much a value of the form breaks the rule: the value itself for an equality, the amount
// missing (positive) for an inequality, zero where the rule holds.
Rational violation(const Constraint& constraint, const Rational& value);

class System {
 public:
  Variable add_variable();
  // Returns the number of the constraint, counted from 0. Throws std::invalid_argument for a
  // variable that is not of this system, a negative level, or a weight that is not positive.
  int add(Constraint constraint);

  const std::vector<Constraint>& constraints() const { return constraints_; }
  int variable_count() const { return variable_count_; }

 private:
  std::vector<Constraint> constraints_;
  int variable_count_ = 0;
};

}  // namespace mullion::solver
