#pragma once

// What a plan takes from the rack and what is to be bought for it, and what board costs each order.
//
// Counts of whole sheets; costs in hundredths of the stock's currency.

#include <optional>
#include <string>
#include <vector>

#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

struct PullLine {
  const StockPiece* piece = nullptr;
  int pull = 0;    // from the rack, for what the plan makes
  int needed = 0;  // for the plan, and for the mats that it leaves out
  int buy = 0;     // what is not on the rack; a sheet without a count is bought as needed
  int packs = 0;   // that hold so many
  int bought() const { return packs * piece->pack; }
  std::int64_t price() const { return bought() * piece->price; }
};

struct OrderShare {
  std::string order;
  std::int64_t cost = 0;
};

struct PullList {
  std::vector<PullLine> lines;    // as in the stock, board by board
  std::vector<OrderShare> orders;  // as in the plan; they add up to its cost

  bool buys() const;
  // Those that are bought, by supplier, those without one last.
  std::vector<PullLine> purchases() const;
};

// `rest` is a plan for what the first one leaves out (plan_missing), if it does. The stock must
// outlive the list.
PullList pull_list(const SheetPlan& plan, const Stock& stock, const SheetPlan* rest = nullptr);

// A sheet's price is shared among its blanks by area, to the hundredth.
std::vector<OrderShare> costs_of_orders(const SheetPlan& plan);

// What a plan leaves out, out of as many new sheets as it takes; nothing where it is complete or
// the board has no sheets.
std::optional<SheetPlan> plan_missing(const SheetPlan& plan, const Stock& stock,
                                      const SheetCutter& cutter, const SheetPlanOptions& options);

}  // namespace mullion
