#pragma once

// What the cutter's profile means for cutting sheets with its straight blade.
//
// Exact lengths. The squaring arm's stop measures off the part that is cut off; it stands half a
// kerf farther than that part is long, so that the blade's middle runs beside it.

#include <optional>

#include "engine/cuts/cutter/profile.h"
#include "engine/sheets/guillotine/pattern.h"

namespace mullion {

struct SheetCutter {
  CutLimits limits = {};
  // The longest part that the squaring arm's stop measures off; nothing: no part is too long. A
  // cut beyond it is measured and marked.
  std::optional<Length> farthest_stop = {};
  Length stop_zero = {};                 // what the stop's scale shows minus the true distance
  std::optional<Scale> stop_scale = {};  // nothing: the scale of the plan
};

SheetCutter sheet_cutter(const CutterProfile& profile);

}  // namespace mullion
