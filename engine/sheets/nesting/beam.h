#pragma once

// Blanks packed into given sheets, all of them if that can be found: a beam search.
//
// Sheets are filled one after the other. A sheet is cut into strips, a strip into rows, a row into
// columns, a column into blanks: every pattern of four stages can be reached, since the widest row
// of a strip and the tallest column of a row may come first. The beam keeps, for each number of
// blanks placed, the states that waste least for the size of what they have placed (the bias after
// L. Libralesso, F. Fontan, "An anytime tree search algorithm for the 2018 ROADEF/EURO challenge
// glass cutting problem", European Journal of Operational Research 291, 2021).

#include <atomic>
#include <cstdint>
#include <vector>

#include "engine/sheets/nesting/nesting.h"

namespace mullion {

struct BeamOptions {
  std::size_t width = 100;  // states kept for each number of blanks
  double bias = 1;          // how much the size of what is placed counts beside the waste
  std::int64_t effort = 0;  // states that may be looked at
  bool all = true;          // a packing that leaves anything out is of no use
  const std::atomic<bool>* stop = nullptr;
};

struct Packing {
  std::vector<CutSheet> sheets;
  std::vector<int> missing;  // per size
  std::int64_t effort = 0;   // that it took

  bool complete() const;
};

// Packs `wanted` blanks of the problem's sizes into sheets of these kinds, in this order. Where not
// all find room, the packing that leaves out the least area that was found.
Packing packed(const NestingProblem& problem, const std::vector<int>& wanted,
               const std::vector<int>& sheets, const BeamOptions& options);

}  // namespace mullion
