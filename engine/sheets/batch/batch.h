#pragma once

// A week's orders as one batch: the blanks of all jobs, and what is written on the label of each.
// (In what order, and which mats are cut together: work_order.h.)
//
// Exact lengths.

#include <string>
#include <vector>

#include "engine/cuts/run/run.h"
#include "engine/mat/mat.h"
#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

struct BatchJob {
  std::string order, title;
  int quantity = 1;
  Scale scale;
  Mat mat;
};

// As they are cut from (engine/cuts/cuts.h).
std::vector<BlankOrder> blanks_of(const std::vector<BatchJob>& jobs, const CutOptions& options);

struct BlankLabel {
  std::string order, layer, board;
  int copy = 1, copies = 1;
  Length width, height;
  int sheet = 0;     // number of the sheet that it is cut from
  std::string code;  // for a scanner: order, layer number and copy, as "A-1017/2/3"
};

// One for each blank of the plan, in the order in which they are cut.
std::vector<BlankLabel> labels_of(const SheetPlan& plan);

}  // namespace mullion
