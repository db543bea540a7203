#pragma once

// A sheet plan as a JSON value, for documents that hold it.

#include <nlohmann/json.hpp>

#include "engine/sheets/report/report.h"

namespace mullion {

nlohmann::ordered_json sheets_json(const SheetReport& report);

}  // namespace mullion
