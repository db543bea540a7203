#pragma once

// A few blanks in given sheets: every division of the blanks among the sheets, and every guillotine
// pattern of each part.
//
// Blanks and groups of blanks are joined side by side or one above the other (P. Y. Wang, "Two
// algorithms for constrained two-dimensional cutting stock problems", Operations Research 31,
// 1983). Of each group the least rectangles are kept; none that wastes more than all sheets can.

#include <cstdint>
#include <vector>

#include "engine/sheets/nesting/nesting.h"

namespace mullion {

enum class Division { found, impossible, open };

// Packs `wanted`, or a part of it with at least that area, in square ticks, into sheets of these
// kinds: the part with the most area. `open` where there are too many divisions to try them by that
// effort, in pairs of groups and of rectangles; `effort` grows by what it took.
Division divided(const NestingProblem& problem, const std::vector<int>& wanted,
                 const std::vector<int>& sheets, double least_area, std::int64_t most_effort,
                 std::int64_t& effort, std::vector<CutSheet>& found);

// Of that many blanks of each size, in square ticks.
double area_of(const std::vector<BlankSize>& blanks, const std::vector<int>& counts);

}  // namespace mullion
