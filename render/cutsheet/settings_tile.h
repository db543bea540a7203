#pragma once

// What to set, in large type, and how many mats are cut with it.

#include "engine/cuts/sheet/dials.h"
#include "render/cutsheet/tiles.h"

namespace mullion::cutsheet {

// Mats alike, with a box to tick for each, or for ten where they are many.
struct Tally {
  std::string heading;
  int quantity = 1;
};

struct SettingsBox {
  std::string title;        // "Set-up 3"
  std::vector<Dial> dials;  // none: all stays as it is
  std::string block;        // "with a block ...", that there is none any more, or empty
  std::string arm_block;    // the same at the squaring arm
  std::string block_in_short, arm_block_in_short;
  std::vector<std::string> notes;
  std::vector<Tally> tallies;
  Locale locale;
};

SettingsBox settings_box(const ToldPlan& plan, const Settings& settings, const Settings& shown);

// Only what is set otherwise than the scales show: "near stop 3 in, block 2 in at the arm".
std::string changed_settings(const ToldPlan& plan, const Settings& settings, const Settings& shown);

Tile settings_tile(const SettingsBox& box, const Look& look, double width);

// The same above the tile that follows it, where little is to be set.
Tile under_settings(const SettingsBox& box, const Tile& below, const Look& look, double width);

}  // namespace mullion::cutsheet
