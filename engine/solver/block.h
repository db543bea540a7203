#pragma once

// Least squares under inequalities, for one block of a level.

#include <optional>
#include <vector>

#include "engine/solver/level.h"

namespace mullion::solver {

// Forms over variables 0 .. variable_count-1, none constant.
struct Block {
  int variable_count = 0;
  std::vector<Preference> zero;
  std::vector<Preference> at_least;
  std::vector<Linear> required;
};

struct BlockOptimum {
  std::vector<Rational> zero;     // the values of the forms, which are the same at any optimum
  std::vector<Rational> missing;  // by `at_least`: how much it lacks
  std::vector<bool> presses;      // by `required`: it is zero at any optimum
  bool is_independent = false;    // all is attained, and no wish to be zero follows from others
};

// Nothing where the required inequalities exclude each other.
std::optional<BlockOptimum> optimise_block(const Block& block);

}  // namespace mullion::solver
