#pragma once

// The order of work as a value of JSON: an array of parts, each with the numbers of its sheets, its
// run (engine/cuts/sheet/run_json.h) and the fallouts that are set aside.

#include <nlohmann/json.hpp>

#include "engine/sheets/batch/work_order.h"

namespace mullion {

nlohmann::ordered_json work_json(const std::vector<WorkPart>& work);

}  // namespace mullion
