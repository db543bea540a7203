#pragma once

// In which stage of the work each sheet is cut, and each mat.
//
// A fallout lies in its window, where it carries the board under the next cut, until its whole mat
// is finished. Stage 1 cuts sheets and off-cuts; what comes out of a fallout is cut in the stage
// after that of the mat which leaves it. A mat is cut when its last blank is there.

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

// The reference of an order and which of its mats, from 1. Orders of a plan have references of
// their own.
using MatCopy = std::pair<std::string, int>;

// Sets the stages of the plan's sheets, puts each board's sheets in that order, and numbers all of
// them by it, board by board within a stage. False, and the plan as it was, where there is no such
// order: a fallout that is used comes of a mat that is never finished, or waits for itself.
bool put_in_stages(SheetPlan& plan);

// Of a plan in stages. A mat that lacks a blank has none.
std::map<MatCopy, int> stages_of_mats(const SheetPlan& plan);

struct SheetOfBoard {
  const BoardPlan* board;
  const PlannedSheet* sheet;
};

// All sheets by their numbers.
std::vector<SheetOfBoard> sheets_in_order(const SheetPlan& plan);

}  // namespace mullion
