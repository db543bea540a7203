#pragma once

// One set-up on the sheet: its settings in large type, a tally for a run, and for each way the
// board lies a diagram with a box to tick for every cut.

#include "engine/cutting/plan/plan.h"
#include "render/cutsheet/board_diagram.h"
#include "render/cutsheet/flow.h"

namespace mullion::cutsheet {

// `size` scales type and diagrams.
void add_set_up(Flow& flow, const CuttingPlan& plan, const Stage& stage, const SetUp& set_up,
                double size);

std::vector<BoardLine> all_lines(const CuttingPlan& plan, const Stage& stage);

}  // namespace mullion::cutsheet
