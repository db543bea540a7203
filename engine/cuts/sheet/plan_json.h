#pragma once

// A cutting plan as a JSON value, for the JSON of one plan and of a run.

#include <nlohmann/json.hpp>

#include "engine/cuts/plan/plan.h"

namespace mullion {

nlohmann::ordered_json plan_json(const CuttingPlan& plan);

// What the scales show for settings: guide, block, near_stop, far_stop; null where there is none.
nlohmann::ordered_json settings_json(const CutterProfile& cutter, const Settings& settings);

}  // namespace mullion
