#pragma once

// The sheet that lies beside the cutter: a cutting plan as a PDF in large type, with the board as
// it lies for every set-up, a box to tick for every cut, and a tally for runs. One page where a
// single mat's plan fits on one; US Letter where the cutter's scales are in inches, else A4.

#include <string>

#include "engine/cutting/plan/plan.h"

namespace mullion {

// `date` as in paper::DocumentInfo.
std::string render_cutsheet(const CuttingPlan& plan, const std::string& date = {});

}  // namespace mullion
