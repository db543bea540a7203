#pragma once

// A good point on the grid: level by level, the best values on the grid that are nearest to the
// best values off it.

#include <optional>

#include "engine/solver/lattice.h"
#include "engine/solver/rules.h"

namespace mullion::solver {

struct Rounded {
  std::vector<Rational> values;  // by variable of the lattice's space

  // The first `settled` levels came out as good on the grid as off it. They, the required
  // equations, and what the working set said of them hold in `start`, where the choice begins.
  std::size_t settled = 0;
  Lattice start;
  std::vector<std::size_t> working;  // numbers of the inequalities that had to be looked at
  std::vector<std::size_t> missed;   // those wanted at a settled level that do not hold
};

// Whether the first method of holding.h alone is tried, as befits a system that is very large.
enum class Effort { one_method, whole };

// At each level the optimum is found over what is left free, and its equations are held one after
// the other. One that the grid cannot attain is held at its nearest attainable value, and what is
// left of its block is optimised again: nearest-plane rounding (L. Babai, "On Lovasz' lattice
// reduction and the nearest lattice point problem", Combinatorica 6, 1986), with a hierarchy in the
// place of one norm. Where inequalities leave no point on the grid that way, the level is held by
// the next method of holding.h; where none serves, all levels are, from the first on; then the
// second nearest value is tried, within a bound on the work. Nothing where none was found.
//
// `exact` is the rules' optimum off the grid. After the rules' levels come `ranks`, one level each;
// at least one.
std::optional<Rounded> round_to_grid(const Lattice& lattice, const Rules& rules,
                                     const std::vector<Rational>& exact,
                                     const std::vector<std::vector<Preference>>& ranks,
                                     Effort effort = Effort::whole);

}  // namespace mullion::solver
