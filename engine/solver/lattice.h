#pragma once

// A space of solutions in which some forms are whole multiples of a step.
//
// Besides free real variables there are grid variables, each any whole multiple of the step; the
// points of the space on the grid are exactly those where the free variables have any such values.
// Forms are brought to one grid variable by whole-number row operations, as in Hermite's normal
// form (A. Schrijver, "Theory of Linear and Integer Programming", 1986, ch. 4), so what is
// attainable on the grid is decided exactly.

#include <optional>
#include <vector>

#include "engine/solver/elimination.h"

namespace mullion::solver {

// The numbers offset + n * spacing, n whole; spacing > 0.
struct Progression {
  Rational offset, spacing;
  bool contains(const Rational& value) const { return ((value - offset) / spacing).is_integer(); }
  Rational at_or_below(const Rational& value) const {
    return offset + ((value - offset) / spacing).floor() * spacing;
  }
};

class Lattice {
 public:
  // `step` > 0. No variable of the space is a grid variable yet.
  Lattice(Elimination space, Rational step);

  const Elimination& space() const { return space_; }
  bool is_on_grid(const Rational& value) const { return (value / step_).is_integer(); }

  // Restricts the space to where the form is a multiple of the step. False where there is no such
  // point on the grid; nothing changes then.
  bool put_on_grid(const Linear& form);

  // Restricts the space to where the form is zero. False where no point on the grid attains that.
  bool hold_at_zero(const Linear& form);

  // A state to come back to, of this lattice and of what was made from it.
  struct Mark {
    int pivots, variables;
  };
  Mark mark() const { return {space_.pivot_count(), space_.variable_count()}; }
  void rewind(const Mark& mark);

  // The two values nearest to zero that the form, not constant, has on the grid: the nearest first,
  // of two equally near the lower one. Only for forms that hold_at_zero has refused.
  std::vector<Rational> values_around_zero(const Linear& form);

  // The values that the form has on the grid. Nothing where it is constant or can have any value.
  std::optional<Progression> values_of(Linear form) const;

  // For a form wanted at least zero: over free variables, and where it holds grid variables alone
  // with its constant lowered to what the grid can attain (V. Chvatal's rounding, Discrete
  // Mathematics 4, 1973).
  Linear tightened(Linear form) const;

 private:
  bool is_grid(int variable) const { return grid_[static_cast<std::size_t>(variable)]; }
  std::optional<Progression> values_of_reduced(const Linear& reduced) const;
  const Term* real_term(const Linear& reduced) const;
  int add_grid_variable();
  Linear gathered(Linear form);

  Elimination space_;
  Rational step_;
  std::vector<bool> grid_;  // by variable of the space
};

}  // namespace mullion::solver
