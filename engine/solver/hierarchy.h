#pragma once

// A system in the form in which it is solved: equations, inequalities, preferences by level.

#include <map>
#include <tl/expected.hpp>
#include <vector>

#include "engine/solver/level.h"
#include "engine/solver/solve.h"

namespace mullion::solver {

class Hierarchy {
 public:
  explicit Hierarchy(const System& system);

  // A further required equation form = 0, not part of the system. False where it contradicts the
  // required equations or says nothing new.
  bool hold(const Linear& form);

  // The form over what the required equations leave free.
  Linear reduce(const Linear& form) const { return required_.reduce(form); }

  tl::expected<Solution, Conflict> solve() const;

 private:
  struct Inequality {
    Linear form;          // at least zero
    int constraint = -1;  // its number in the system
    int sign = 1;         // -1: the constraint is its negative
  };
  using Point = std::vector<Rational>;

  void take(const Constraint& constraint, int number);
  void take_equation(const Linear& form, int number);
  tl::expected<Point, Conflict> solve_with(const std::vector<std::size_t>& working) const;
  Conflict conflict_of(const Linear& combined, std::vector<Conflict::Part> parts) const;

  int system_variables_ = 0;
  Elimination required_;
  std::vector<std::pair<int, Linear>> independent_;  // equations that solved something
  std::vector<Inequality> inequalities_;
  std::map<int, std::vector<Preference>> levels_;
  std::vector<Conflict> contradictions_;  // the first, if any
};

}  // namespace mullion::solver
