#pragma once

// Cutting plans and runs as JSON values, for documents that hold them.

#include <nlohmann/json.hpp>

#include "engine/cuts/run/run.h"

namespace mullion {

nlohmann::ordered_json plan_json(const CuttingPlan& plan);
nlohmann::ordered_json run_json(const CuttingRun& run);

// What the scales show for settings: guide, block, near_stop, far_stop; null where there is none.
nlohmann::ordered_json settings_json(const CutterProfile& cutter, const Settings& settings);

}  // namespace mullion
