#pragma once

// Which of several pictures of one size stands where. To an arrangement it is all the same, to the
// customer it is not: pictures hang as they are where there is a place for them, and follow one
// another as the list has them, left to right and from the top down.

#include "engine/suggest/block.h"

namespace mullion::suggest {

// The same openings at the same places. Pictures with an order stay where they are, and those of a
// group among themselves.
Block in_reading_order(const Block& block, const std::vector<Item>& items, Length gap);

}  // namespace mullion::suggest
