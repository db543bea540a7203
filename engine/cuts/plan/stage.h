#pragma once

// Plans one stage: what is cut out of one board.

#include "engine/cuts/plan/order.h"
#include "engine/cuts/plan/plan.h"

namespace mullion {

struct StageRequest {
  const CutterProfile& cutter;
  Way way;
  int quantity;
  const BoardCuts& board;
  int first_cut, first_set_up;  // numbers
  OrderMemo& memo;
};

// What the stage below needs to know to be cut in the same order.
struct PlannedLines {
  const CutLines* lines = nullptr;
  std::vector<OrderItem> items;  // one for each straight line
  std::vector<int> order;
};

struct PlannedStage {
  Stage stage;
  PlannedLines lines;
};

PlannedStage plan_stage(const StageRequest& request, const PlannedLines* above);

}  // namespace mullion
