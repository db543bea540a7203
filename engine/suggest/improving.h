#pragma once

// Makes an arrangement better step by step: two pictures change places, one turns, or one goes to
// stand beside, above or below another, as long as the score rises (a local search). Nothing is
// random: the steps are tried in a fixed order and the first that helps is taken.

#include "engine/suggest/boards.h"
#include "engine/suggest/bonds.h"

namespace mullion::suggest {

struct Improved {
  Block block;
  std::uint64_t looked_at = 0;  // arrangements, at most `most_steps_tried` and one round
};

inline constexpr std::uint64_t most_steps_tried = 20'000;

// `start` fits on one of the boards and keeps the bonds; so does the result.
Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  const Boards& boards, Length gap);

}  // namespace mullion::suggest
