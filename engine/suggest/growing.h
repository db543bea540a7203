#pragma once

// Good slicing arrangements of many pictures: blocks are joined two at a time, and of all the ways
// to go on only the most promising are kept (a beam search). Nothing is random.

#include <vector>

#include "engine/suggest/bonds.h"

namespace mullion::suggest {

inline constexpr std::size_t most_items = 48;

// How items that may turn stand; the others stand as they are.
enum class Standing { as_most_do, upright, lying };

std::vector<Block> standing_blocks(const std::vector<Item>& items, Standing standing);

struct Taste {
  double shape = 1;         // wished width over height of the whole
  int beam = 40;            // how many half-made arrangements are kept
  bool keep_order = false;  // only neighbours in the list are joined
};

// Pictures are given in the sequence of the bonds.
std::vector<Block> grow_arrangements(const std::vector<Block>& pictures, const Bonds& bonds,
                                     Length gap, const Taste& taste);

// The blocks as they come, broken into `lines` rows of a column (or columns of a row) of nearly
// equal length.
Block in_lines(const std::vector<Block>& blocks, Length gap, Block::Kind across, int lines);

}  // namespace mullion::suggest
