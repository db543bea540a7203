#pragma once

// A cutting plan as JSON, complete: whoever reads it needs nothing else to cut the mat.
//
// Settings are objects {"shows": "3 1/16 in", "rounded_by": "0.4 mm"}: what the cutter's scale must
// show, and by how much that is more than it should be, exactly. Other lengths are exact texts with
// a unit. Edges are the letters of engine/cuts/board.h.

#include <string>

#include "engine/cuts/plan/plan.h"

namespace mullion {

std::string plan_to_json(const CuttingPlan& plan);

}  // namespace mullion
