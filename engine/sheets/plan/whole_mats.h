#pragma once

// A sheet plan that makes whole mats: all layers of one or none.
//
// Where the stock does not suffice, the orders are served in the order in which they are given (a
// job file states no day by which it is due), each as many of its mats as can be; what an order
// leaves, later ones may take.

#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

// As plan_sheets. Lines of one order follow each other and have the same quantity. What is not made
// stands in left_out, and its blanks are missing from every board of it.
Result<SheetPlan> plan_whole_mats(const std::vector<BlankOrder>& orders, const Stock& stock,
                                  const SheetCutter& cutter, const Scale& scale,
                                  const SheetPlanOptions& options = {});

}  // namespace mullion
