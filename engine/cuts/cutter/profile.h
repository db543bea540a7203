#pragma once

// A straight-line mat cutter as a shop describes it once: its reach, its scales, where they err,
// and how long its user takes.
//
// All lengths are exact ticks. Distances along the rail are measured from the face of the squaring
// arm; the guide's distance from the line on which the blade enters the board's upper surface (see
// engine/cuts/board.h). What a scale shows is the true distance plus that scale's `zero`.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/length/format.h"

namespace mullion {

enum class GuideSide { left, right };  // as the operator sees it from the near end of the cutter

// Which way the blade's tip points from where it enters the upper surface. The kept board is always
// on the side to which the tip points, since the bevel makes the window wider on the face.
enum class BladeLean { to_guide, from_guide };

struct GuideScale {
  Length least, most;           // what it reaches, true distances
  Length zero;                  // shown minus true
  bool board_over_bar = false;  // the bar lets a board lie over it: a block may stand outside it
  friend bool operator==(const GuideScale&, const GuideScale&) = default;
};

// A stop on the rail. `zero` takes in the offset between the head's mark and the stop.
struct StopScale {
  Length least, most;  // between which it locks, true distances from the squaring arm
  Length zero;         // shown minus true, where true is the place of the head's mark
  friend bool operator==(const StopScale&, const StopScale&) = default;
};

// How far the blade must go past a line drawn on the back so that the corner is clean on the face.
struct OverCut {
  Length thickness, distance;
  friend bool operator==(const OverCut&, const OverCut&) = default;
};

// Seconds. Round figures of our own, not measured: they rank ways of working, and a shop replaces
// them by its own.
struct HandlingTimes {
  int guide_move = 30;     // loosen, read, tighten
  int stop_move = 15;      // of one stop
  int quarter_turn = 4;    // of the board on the cutter
  int rechuck = 12;        // board out, next one in and square
  int pencil_line = 20;    // one line drawn on one board
  int by_eye = 6;          // one end of a cut brought to a line by eye
  int freehand_line = 30;  // a board brought under the rail to a line, without the guide
  int bevel_cut = 8;       // blade in, pull, blade out
  int straight_cut = 25;   // one side of a blank
  int curve = 150;         // an oval or template cut
  int tape_layer = 90;     // fallouts back, under-mat taped on
  int arm_stop_move = 20;  // the squaring arm's stop
  friend bool operator==(const HandlingTimes&, const HandlingTimes&) = default;
};

struct CutterProfile {
  std::string id, name;
  Scale scale;                       // unit, and finest division of its scales
  Length longest_cut;                // along the rail, over-cuts included
  Length widest_board;               // across the rail
  GuideSide side = GuideSide::left;  // of the guide; without one, the side its blade leans from
  BladeLean lean = BladeLean::to_guide;
  std::optional<GuideScale> guide;
  std::optional<StopScale> near_stop, far_stop;
  Length arm_length;  // longest blank that the squaring arm's own stop measures off
  Length arm_zero;    // shown minus true
  Length mark_lead;   // how far the blade cuts past a line when the head's mark stands on it
  std::vector<OverCut> over_cuts;  // by rising thickness; at least one
  Length kerf;                     // of the straight cut
  HandlingTimes times;
  friend bool operator==(const CutterProfile&, const CutterProfile&) = default;
};

// The table is for bevels of 45 degrees, whose run is the board's thickness; for another angle the
// run takes its place. From the table: the entry itself, else in proportion between two entries or
// to the outermost one, rounded up to a whole tick.
Length over_cut(const CutterProfile& cutter, Length run);

int stops(const CutterProfile& cutter);

// Three that come with the program, modelled on no machine; all figures are round ones of our own.
// "bench" (one guide and two stops) is the default; "plain-bench" has neither; "metric-bench" has
// metric scales.
const std::vector<CutterProfile>& generic_cutters();
const CutterProfile* generic_cutter(std::string_view id);
const CutterProfile& default_cutter();
// "bench" for inches, else "metric-bench".
const CutterProfile& generic_cutter_for(Unit unit);

}  // namespace mullion
