#pragma once

// Which off-cuts and fallouts a shop keeps, and what they count for: its rule.

#include "engine/sheets/nesting/nesting.h"
#include "engine/sheets/stock/stock.h"

namespace mullion {

// The least sides of an off-cut that is kept.
struct KeepRule {
  Length shorter = shorter_side_of_offcut, longer = longer_side_of_offcut;

  bool keeps(Length width, Length height) const;
};

// What an off-cut of that size counts for, in the stock's currency: Stock::offcut_percent of what
// so much of the board's cheapest sheet costs. Nothing for one that is not kept, and for a board
// without sheets. The stock's prices are known (with_known_prices).
std::int64_t offcut_value(const Stock& stock, const Board& board, Length width, Length height,
                          const KeepRule& keep);

// The stock with that value as the price of each off-cut that states none, so that a large one is
// not cut where a small one does.
Stock with_offcut_values(Stock stock, const KeepRule& keep);

}  // namespace mullion
