#pragma once

// What each scale of the cutter is to show for a set-up, and whether it has to be moved for it.

#include <string>
#include <vector>

#include "engine/cuts/sheet/told.h"

namespace mullion {

struct Dial {
  std::string name;   // "guide", "near stop", "far stop", in the plan's locale
  std::string shows;  // "3 1/16 in"; "freehand", "by eye" where nothing is set
  bool set = true;
  bool moves = true;  // false: it shows that already, or is out of the way already
};

// Of the scales that the plan's way of working uses. `shown` is what they show before.
std::vector<Dial> dials_of(const ToldPlan& plan, const Settings& settings, const Settings& shown);

// Blocks in use, and those that are to be taken away; a block at the guide goes with the guide.
std::vector<Dial> block_dials_of(const ToldPlan& plan, const Settings& settings,
                                 const Settings& shown);

// What measures off a side of a blank.
Dial blank_dial(const CutterProfile& cutter, const StraightCut& side, const Locale& locale);

}  // namespace mullion
