#pragma once

// Makes an arrangement better step by step: two pictures change places, one turns, or one goes to
// stand beside, above or below another, as long as the score rises (a local search). Nothing is
// random: the steps are tried in a fixed order and the first that helps is taken.

#include <functional>
#include <optional>

#include "engine/suggest/boards.h"
#include "engine/suggest/bonds.h"

namespace mullion::suggest {

struct Improved {
  Block block;
  std::uint64_t looked_at = 0;  // arrangements, at most so many and one more
};

inline constexpr std::uint64_t most_steps_tried = 20'000;

// What a block scores; nothing where that is below `least`, or where it fits nowhere.
using ScoreOf = std::function<std::optional<double>(const Block& block, double least)>;

// `start` keeps the bonds; so does the result.
Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  Length gap, const ScoreOf& score_of, std::uint64_t most_steps);

// By the score with equal gaps. `start` fits on one of the boards; so does the result.
Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  const Boards& boards, Length gap, std::uint64_t most_steps = most_steps_tried);

}  // namespace mullion::suggest
