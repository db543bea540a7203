#pragma once

// Every slicing arrangement of a few pictures, one after the other.

#include <functional>

#include "engine/suggest/block.h"

namespace mullion::suggest {

inline constexpr std::size_t most_items_for_every_arrangement = 6;

// Calls `visit` once for each arrangement that keeps the items' bonds and each way of turning the
// items that may turn (a square is not turned). `part` of `parts` shares the work: each arrangement
// is visited by exactly one part. `is_wanted` is asked first, with the size alone; where it says no
// the arrangement is not built. Returns how many arrangements there were in this part, wanted or
// not.
std::uint64_t visit_every_arrangement(const std::vector<Item>& items, Length gap, int part,
                                      int parts,
                                      const std::function<bool(Length, Length)>& is_wanted,
                                      const std::function<void(const Block&)>& visit);

}  // namespace mullion::suggest
