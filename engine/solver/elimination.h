#pragma once

// Linear equations solved one after the other, exactly.
//
// Each equation becomes a pivot, `variable = the rest`; the rest may hold variables that become
// pivots later, so the whole is triangular and stays sparse. Of a batch of equations the shortest
// goes first, on its least used variable: the rule of H. M. Markowitz, "The elimination form of the
// inverse and its application to linear programming", Management Science 3(3), 1957, in its
// simplest form. An object must not be used by two threads at once, not even for reading.

#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

class Elimination {
 public:
  explicit Elimination(int variable_count);
  // Variables from `pivot_limit` on are parameters: they never become pivots, and an equation left
  // with parameters alone is ignored.
  Elimination(int variable_count, int pivot_limit);

  // Adds `form == 0` for every form. False where that contradicts what was known or one another;
  // the object is of no further use then.
  bool add(std::vector<Linear> forms);

  // Adds `variable == value`; neither the variable nor any in `value` is a pivot.
  void substitute(int variable, Linear value);

  // The form over variables that are no pivots.
  Linear reduce(Linear form) const;

  bool is_reduced(const Linear& form) const;  // already over variables that are no pivots
  bool is_pivot(int variable) const { return order_[static_cast<std::size_t>(variable)] >= 0; }
  int pivot_count() const { return static_cast<int>(pivots_.size()); }
  int variable_count() const { return static_cast<int>(order_.size()); }
  // No variable is free.
  bool is_settled() const { return pivot_count() == variable_count(); }
  int add_variable();

  // Takes back what was added since there were so many pivots and variables.
  void rewind(int pivot_count, int variable_count);

  // Overwrites in `values` those of all pivots; the others are read from it.
  void back_substitute(std::vector<Rational>& values) const;

 private:
  struct Pivot {
    int variable;
    Linear value;
  };

  int pivot_limit_;
  std::vector<Pivot> pivots_;
  std::vector<int> order_;                 // by variable: its place in pivots_, or -1
  mutable std::vector<Rational> scratch_;  // by variable; all zero between calls
};

}  // namespace mullion::solver
