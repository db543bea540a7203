#include "engine/sheets/plan/sheet_cutter.h"

namespace mullion {

SheetCutter sheet_cutter(const CutterProfile& profile) {
  return {{profile.kerf, profile.longest_cut, profile.widest_board},
          profile.arm_length,
          profile.arm_zero,
          profile.scale};
}

}  // namespace mullion
