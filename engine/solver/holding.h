#pragma once

// Holds one level's best values on the grid.

#include <optional>
#include <vector>

#include "engine/solver/lattice.h"
#include "engine/solver/level.h"

namespace mullion::solver {

enum class Method {
  // The nearest attainable value, one after the other.
  nearest,
  // The nearest value that leaves some room for the inequalities (room.h).
  leaving_room,
  // The limits that press first; the second nearest value where nothing is left after the nearest.
  repairing,
};

struct Held {
  std::vector<bool> missed;  // by `at_least` of the level
  bool is_rounded = false;   // some value is not the best off the grid
};

// Restricts the lattice to where the level is as good as it gets on the grid, as far as the method
// finds that. A value that the grid cannot attain is held at another, and what is left of its block
// is optimised again. Nothing where that left no point; the lattice is of no use then before it is
// rewound. The level's required forms are tightened on the lattice.
//
// `work_left` bounds the forms that are optimised; nothing where it is used up.
std::optional<Held> hold_level(Lattice& lattice, const Level& level, Method method,
                               std::int64_t& work_left);

// The level's best values off the grid, where the required forms hold that the lattice tightens.
std::optional<LevelOptimum> optimum_on(const Lattice& lattice, Level& level);

}  // namespace mullion::solver
