#pragma once

// The board as it lies on the cutter, face down, seen by the operator: its lettered edges, the
// guide, the squaring arm, the rail, the lines that are cut already and those to cut now.

#include <vector>

#include "engine/cutting/plan/plan.h"
#include "render/paper/canvas.h"

namespace mullion::cutsheet {

// A cut's line on the board, in the Mat's coordinates.
struct BoardLine {
  Point start, end;
  int number = 0;
};

std::vector<BoardLine> lines_of(const CuttingPlan& plan, const Placement& placement);

struct DiagramView {
  const CuttingPlan& plan;
  const Stage& stage;
  const SetUp& set_up;
  const Placement& placement;
  const std::vector<BoardLine>& all;  // of the stage
};

void draw_board_as_it_lies(paper::Canvas& canvas, const DiagramView& view, const paper::Box& box);

}  // namespace mullion::cutsheet
