#pragma once

// The test-cut sheet: what to set and cut on scrap to measure a cutter up, drawn, with a line to
// write each measure on under the name that `mullion cutter check` takes. The test window and the
// bar that proves the print's scale are at full size.

#include <string>

#include "engine/cuts/cutter/check.h"
#include "engine/locale/locale.h"

namespace mullion {

std::string render_test_sheet(const CutterProfile& cutter, Length thickness,
                              const Locale& locale = {});

}  // namespace mullion
