#pragma once

// Which sheets a plan could take from the stock, cheapest first.

#include <cstdint>
#include <optional>
#include <vector>

#include "engine/sheets/nesting/nesting.h"

namespace mullion {

struct StockCombination {
  std::int64_t cost = 0;
  std::vector<int> counts;  // per kind of stock
};

// All combinations with a cost from `least` to less than `below` and at least `area` square
// millimetres; sheets that cost nothing are taken as far as they are on hand. Nothing when there
// are more than `limit`.
std::optional<std::vector<StockCombination>> stock_combinations(const NestingProblem& problem,
                                                                std::int64_t least,
                                                                std::int64_t below, double area,
                                                                std::size_t limit);

}  // namespace mullion
