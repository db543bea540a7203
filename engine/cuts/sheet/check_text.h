#pragma once

// The test-cut sheet, and what was corrected, as plain text.

#include <string>

#include "engine/cuts/cutter/check.h"

namespace mullion {

std::string test_cut_text(const CutterProfile& cutter, Length thickness);
std::string corrections_text(const MeasuredUp& measured);

}  // namespace mullion
