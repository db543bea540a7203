#include "engine/sheets/plan/sheet_cutter.h"

#include <algorithm>

namespace mullion {

SheetCutter sheet_cutter(const CutterProfile& profile) {
  const Length along = std::min(profile.longest_cut, profile.reach.value_or(profile.longest_cut));
  return {{profile.kerf, along, profile.widest_board},
          profile.arm_length,
          profile.arm_zero,
          profile.scale};
}

}  // namespace mullion
