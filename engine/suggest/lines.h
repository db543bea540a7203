#pragma once

// Pictures in lines of nearly equal length, so that gaps alone can make them end together; and a
// larger picture with the others in lines around it or beside it.

#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

// In so many rows (of a column) or columns (of a row), for each number of lines there can be: those
// alike in the other direction together, and whichever make the lines most alike in length. The
// largest stand in the middle.
std::vector<Block> even_lines(const std::vector<Block>& pictures, Length gap);

// The largest picture, with the others in lines on all its sides, or all on one side. Nothing for
// fewer than three pictures.
std::vector<Block> around_the_largest(const std::vector<Block>& pictures, Length gap);

}  // namespace mullion::suggest
