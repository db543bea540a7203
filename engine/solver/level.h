#pragma once

// One level of preferences: least weighted squares over what is still free.

#include <optional>
#include <vector>

#include "engine/solver/elimination.h"

namespace mullion::solver {

struct Preference {
  Linear form;
  Rational weight = 1;
};

struct Level {
  std::vector<Preference> zero;      // wanted to be zero
  std::vector<Preference> at_least;  // wanted to be at least zero
  std::vector<Linear> required;      // at least zero in any case
};

// The wishes over the free variables of the space, without those that are constant there.
std::vector<Preference> reduced(const Elimination& space, const std::vector<Preference>& wishes);

// Numbers of a level's forms.
struct Members {
  std::vector<std::size_t> zero, at_least, required;
};

struct LevelOptimum {
  // Each block has its own variables.
  struct Block {
    // What holds at every optimum and nowhere else, the required inequalities apart: forms that are
    // zero, over the free variables of the space.
    std::vector<Linear> equations;
    std::size_t limits = 0;  // the last so many equations are required inequalities that press
    // Each equation is a preference that holds, whatever value the others would be given.
    bool is_independent = false;
    Members members;
  };
  std::vector<Block> blocks;
  std::vector<bool> missed;  // by `at_least`: it does not hold
};

// Nothing where the required inequalities cannot hold. They are looked at only as far as
// preferences depend on what they restrict. The level's forms are brought over the free variables
// of the space, so that another call on a smaller space has less to do.
//
// The level falls apart into blocks that share no free variable. A block of equations that can
// hold together is solved as such; any other by its optimality conditions, of which the
// inequalities' part is a linear complementarity problem (complementarity.h).
std::optional<LevelOptimum> optimise_level(const Elimination& space, Level& level);

}  // namespace mullion::solver
