#pragma once

// The rules of a system in the form in which they are solved, split into components that share no
// variable.

#include <map>
#include <vector>

#include "engine/solver/level.h"
#include "engine/solver/system.h"

namespace mullion::solver {

// An inequality form >= 0, required at level 0 or wanted at a level from 1.
struct Inequality {
  Linear form;
  int level = 0;
  Rational weight = 1;
  int constraint = -1;  // its number in the system
};

// Over variables 0 .. variables.size()-1.
struct Rules {
  std::vector<int> variables;             // of the system, by variable here; rising
  std::vector<Linear> equations;          // required, each zero
  std::vector<int> equation_constraints;  // by equation: its number in the system
  std::vector<Inequality> inequalities;
  std::map<int, std::vector<Preference>> levels;  // equalities wanted, by level

  int variable_count() const { return static_cast<int>(variables.size()); }
};

struct Components {
  std::vector<Rules> parts;
  std::vector<int> part_of;         // by variable of the system
  std::vector<int> number_in_part;  // by variable of the system
  // Required rules without a variable that do not hold.
  std::vector<int> broken_constants;

  // A form that is not constant, over the variables of its part.
  Linear localise(const Linear& form) const;
  int part_of_form(const Linear& form) const;
};

// `links` are further forms whose variables belong together.
Components split(const System& system, const std::vector<Linear>& links = {});

}  // namespace mullion::solver
