#pragma once

// From a job's pictures to the items that are arranged, and from an arrangement back to a job.

#include "engine/suggest/criteria.h"

namespace mullion::suggest {

// The job without its arrangement: its pictures, boards, frame and outer size, and how its bottom
// border is weighted. Layers that are cut for some openings alone are so for their pictures.
Job without_arrangement(const Job& job);

// The openings in the top mat, of a job without arrangement.
std::vector<Item> items_of(const Job& bare);

// By how much a weighted bottom border is greater than a top border of that width; zero where it
// hangs on the board.
Length bottom_extra(const Job& bare, Length border);

// The job with the pictures so arranged on the board; those that the arrangement turns say so.
Job arranged(const Job& bare, const Block& block, const Board& board, Length gap);

}  // namespace mullion::suggest
