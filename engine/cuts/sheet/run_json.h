#pragma once

// A run as JSON: its kinds with their orders and plans (as in engine/cuts/sheet/json.h), the
// blanks, and the steps. A step names what is set, what of it moves, and the set-ups of the kinds'
// plans that are cut with it.

#include <string>

#include "engine/cuts/run/run.h"

namespace mullion {

std::string run_to_json(const CuttingRun& run);

}  // namespace mullion
