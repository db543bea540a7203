#pragma once

// Symmetric patterns: a middle, wings on its two sides that are each other's mirror image, and
// bands above and below that are their own. Twins, that is pictures of the same or nearly the same
// size, go to mirrored places; those that have no twin stand in the middle, on the axis. A ring
// around a large picture, mirrored columns and a centre with two wings are all of this form. Every
// pattern is also made on its side, mirrored top to bottom.

#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

// Pictures are nearly of the same size where neither side differs by more than this share. Our own
// figure.
inline constexpr double twin_difference = 0.15;

std::vector<Block> symmetric_patterns(const std::vector<Block>& pictures, Length gap);

}  // namespace mullion::suggest
