#pragma once

// Plans one stage: a layer's windows, or the panels of its V-grooves.

#include "engine/cuts/plan/order.h"
#include "engine/cuts/plan/plan.h"

namespace mullion {

struct StageRequest {
  const CutterProfile& cutter;
  Way way;
  int quantity;
  Rect board;  // whose edges lie at the guide and the squaring arm
  const std::vector<Window>& windows;
  Length run;
  int first_cut, first_set_up;  // numbers
};

// What the stage below needs to know to be cut in the same order.
struct PlannedLines {
  LayerLines lines;
  std::vector<OrderItem> items;  // one for each straight line
  std::vector<int> order;
};

struct PlannedStage {
  Stage stage;
  PlannedLines lines;
};

PlannedStage plan_stage(const StageRequest& request, const PlannedLines* above);

}  // namespace mullion
