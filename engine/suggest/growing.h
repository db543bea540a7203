#pragma once

// Good slicing arrangements of many pictures: blocks are joined two at a time, and of all the ways
// to go on only the most promising are kept (a beam search). Nothing is random.

#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

inline constexpr std::size_t most_items = 24;

struct Taste {
  double shape = 1;         // wished width over height of the whole
  int beam = 40;            // how many half-made arrangements are kept
  bool keep_order = false;  // only neighbours in the list are joined
};

std::vector<Block> grow_arrangements(const std::vector<Item>& items, Length gap,
                                     const Taste& taste);

// The items in the order of the list, broken into `lines` rows (or columns) of nearly equal length.
Block in_lines(const std::vector<Item>& items, Length gap, Block::Kind across, int lines);

}  // namespace mullion::suggest
