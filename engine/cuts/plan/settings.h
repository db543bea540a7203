#pragma once

// What is set on the cutter for a cut. True distances, in exact ticks; the scales' zeros come in
// when they are printed (engine/cuts/sheet/scale_text.h).

#include <optional>

#include "engine/cuts/cutter/profile.h"

namespace mullion {

// A strip of board at the guide. Between guide and board it takes its width off the guide's
// distance; outside the guide's bar, where a board can lie over the bar, it adds its width.
struct Block {
  Length width;
  bool outside = false;
  friend bool operator==(const Block&, const Block&) = default;
};

struct Settings {
  std::optional<Length> guide;  // nothing: the cut is made freehand
  std::optional<Block> block;
  // Places of the head's mark; nothing: by eye, and the stop is pushed out of the way.
  std::optional<Length> near_stop, far_stop;
  std::optional<Length> arm_block;  // a strip between the squaring arm and the board
  friend bool operator==(const Settings&, const Settings&) = default;
};

// Of any scale with that one's unit: what a steady hand sets on a rule, 1/64 in or 0.1 mm, or the
// scale's own division where that is finer.
Length setting_step(const Scale& scale);
// A true distance as the scale is to show it: with the scale's zero, rounded once to that step.
Length shown_on(const Scale& scale, Length true_distance, Length zero);

struct GuideSetting {
  Length guide;
  std::optional<Block> block;
};

// No stop, and nothing at the arm.
Settings settings_at(const GuideSetting& setting);

// Guide, and block where the guide alone does not reach; nothing where neither does. A block is
// chosen so that the guide stands at a whole inch or ten millimetres, and is wide enough to handle.
std::optional<GuideSetting> guide_for(const CutterProfile& cutter, Length distance);

// The block that would do if the board could lie over the guide's bar.
std::optional<GuideSetting> outside_block(const CutterProfile& cutter, Length distance);

// With the block of an earlier layer's cut, where the guide reaches.
std::optional<GuideSetting> guide_with(const CutterProfile& cutter, Length distance,
                                       const std::optional<Block>& block);

// Nothing where the stop does not reach, or its scale would show less than nothing.
std::optional<Length> stop_for(const std::optional<StopScale>& stop, Length place);

}  // namespace mullion
