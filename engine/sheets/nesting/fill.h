#pragma once

// The most valuable pattern found for one sheet when each blank is wanted only so many times.

#include <cstdint>
#include <vector>

#include "engine/sheets/guillotine/best_pattern.h"

namespace mullion {

struct Fill {
  Pattern pattern;
  std::vector<int> counts;  // per size of blank
  std::int64_t value = 0;
};

std::vector<int> counts_of(const Pattern& pattern, std::size_t sizes);

// The pattern without the blanks of which no more are wanted.
Pattern wanted_part(const PatternSearch& search, Pattern pattern, std::vector<int> wanted);

// Cuts a sheet of width x height. `search` is for that sheet and those blanks. Starts from the best
// pattern without the limits; drops what is too many; lowers the values of those and tries again;
// fills the gaps. `effort` grows by what the searches took.
Fill fill_sheet(const PatternSearch& search, const std::vector<std::int64_t>& values,
                const std::vector<int>& wanted, std::int64_t& effort);

}  // namespace mullion
