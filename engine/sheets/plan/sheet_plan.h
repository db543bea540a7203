#pragma once

// The sheet plan: which blank is cut from which sheet, off-cut or fallout, and in what order.
//
// Exact lengths; costs in hundredths of the stock's currency. Boards are planned one by one; the
// stages of the work go through all of them (engine/sheets/plan/stages.h).

#include <atomic>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "engine/sheets/nesting/nesting.h"
#include "engine/sheets/plan/blanks.h"
#include "engine/sheets/plan/keep_rule.h"
#include "engine/sheets/plan/sheet_cutter.h"
#include "engine/sheets/stock/stock.h"

namespace mullion {

// One copy of a blank: the line of the board's orders and which of its copies, from 1.
struct BlankCopy {
  int line = -1, copy = 0;
  friend bool operator==(const BlankCopy&, const BlankCopy&) = default;
};

struct PlannedSheet {
  int number = 0;    // from 1, through the whole plan, in the order of cutting
  int stage = 1;     // of the work
  int stock = -1;    // index into the stock's pieces; -1: a fallout
  BlankCopy parent;  // of a fallout
  Fallout fallout;   // the very one
  std::int64_t price = 0;
  Length width, height;  // of the whole sheet
  Sides trim;
  Pattern pattern;                // within the trimmed sheet; its blanks index into `blanks`
  std::vector<BlankCopy> blanks;  // one for each blank of the pattern
};

struct BoardPlan {
  Board board;
  std::vector<BlankOrder> lines;
  std::vector<PlannedSheet> sheets;  // by stage
  std::vector<BlankCopy> missing;    // no sheet on hand holds them
  std::int64_t cost = 0;
  std::int64_t bound = 0;                             // no plan that makes every blank costs less
  std::optional<std::int64_t> cost_without_fallouts;  // where fallouts are used, which is only
                                                      // where they save something
};

// Mats of an order that are not made, since a board is short: the last ones.
struct LeftOut {
  std::string order;
  int mats = 0, ordered = 0;
  std::vector<Board> short_of;

  int first_copy() const { return ordered - mats + 1; }
};

struct SheetPlan {
  std::string currency;
  Scale scale;
  CutLimits limits;
  std::vector<BoardPlan> boards;
  std::vector<LeftOut> left_out;  // by plan_whole_mats
  Problems notes;                 // such as a sheet that cannot be trimmed on this cutter

  std::int64_t cost() const;
  std::int64_t bound() const;
  bool is_complete() const;
};

struct SheetPlanProgress {
  std::string board;  // its name
  std::size_t board_number = 0, boards = 0;
  NestingProgress nesting;
};

struct SheetPlanOptions {
  bool reuse_fallouts = true;
  KeepRule keep = {};                             // a fallout that would be kept has a value
  std::int64_t effort = NestingOptions{}.effort;  // for each board; they share its patience
  const std::atomic<bool>* stop = nullptr;
  std::function<void(const SheetPlanProgress&)> report;
};

// Errors: a blank that no sheet in the stock could ever hold; a board that the stock does not list
// (with a near name).
Result<SheetPlan> plan_sheets(const std::vector<BlankOrder>& orders, const Stock& stock,
                              const SheetCutter& cutter, const Scale& scale,
                              const SheetPlanOptions& options = {});

}  // namespace mullion
