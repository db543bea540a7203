#pragma once

// A straight-line mat cutter as a shop describes it once: its reach, its scales, where they err,
// and how long its user takes.
//
// All lengths are exact ticks. Distances along the rail are measured from the face of the squaring
// arm; the guide's distance from the line on which the blade enters the board's upper surface (see
// engine/cuts/board.h). What a scale shows is the true distance plus that scale's `zero`; a place
// where it would show less than nothing cannot be set. What is optional and left out has not been
// measured: nothing is assumed in its stead, and each says what follows from that.

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

// Ways of working: what shows where a cut begins and ends, and how the lines are placed.
enum class Way {
  pencilled,       // every line drawn on the back with a rule; cuts begin and end by eye
  guide_marked,    // the same lines drawn along the rail with the board at the guide
  template_taped,  // a printed template is taped on; cuts begin and end by eye at its lines
  one_stop,        // cuts end at a stop and begin by eye, at a pencil line or the cut made before
  two_stops,       // cuts begin and end at stops
  stop_blocks,     // the same, stops set once for a size; blocks at the arm move the board along
  gauges,          // the same, and gauge pieces at the guide move it across
};
inline constexpr Way all_ways[] = {Way::pencilled, Way::guide_marked, Way::template_taped,
                                   Way::one_stop,  Way::two_stops,    Way::stop_blocks,
                                   Way::gauges};

const char* name_of(Way way);  // "pencil lines"
const char* word_of(Way way);  // "pencil", as files and options name it

// A pulled head cuts toward the operator: from the far end of a line to the near one.
enum class Stroke { pull, push };

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
  int guide_stroke = 8;    // a pencil line drawn along the rail with the board at the guide
  int gauge_piece = 60;    // a spacer cut to width from scrap, once for a plan
  int gauge_change = 5;    // a spacer put in or taken out, on one board
  int tape_template = 90;  // a printed template taped onto one board
  friend bool operator==(const HandlingTimes&, const HandlingTimes&) = default;
};

// How far off a line is likely to be by each way to place it. Round figures of our own, not
// measured: they weigh ways of working against each other, and a shop replaces them by its own.
struct LikelyErrors {
  Length guide = Length::from_ticks(240);  // a setting of the guide, read off its scale
  Length stop = Length::from_ticks(240);   // a setting of a stop
  Length gauge = Length::from_ticks(80);   // a spacer against guide or arm, each time it is put in
  Length rule_line = Length::from_ticks(640);  // a line pencilled with a rule
  Length guide_line =
      Length::from_ticks(320);  // a line pencilled along the rail, beside the guide's own
  Length printed_line = Length::from_ticks(480);  // a line of a template that is taped on
  Length by_eye = Length::from_ticks(480);        // the head's mark brought to a line
  Length under_rail = Length::from_ticks(640);    // a board brought under the rail to a line
  friend bool operator==(const LikelyErrors&, const LikelyErrors&) = default;
};

struct CutterProfile {
  std::string id, name;
  Scale scale;          // unit, and finest division of its scales
  Length longest_cut;   // along the rail, over-cuts included
  Length widest_board;  // across the rail
  // How far from the squaring arm's face the blade gets along the rail. Not measured: a plan whose
  // cuts lie farther out than the longest cut warns of it.
  std::optional<Length> reach;
  // That lies under the rail. Not measured: any is taken.
  std::optional<Length> thickest_board;
  GuideSide side = GuideSide::left;  // of the guide; without one, the side its blade leans from
  BladeLean lean = BladeLean::to_guide;
  std::optional<GuideScale> guide;
  std::optional<StopScale> near_stop, far_stop;
  Length arm_length;  // longest blank that the squaring arm's own stop measures off
  Length arm_zero;    // shown minus true
  Stroke stroke = Stroke::pull;
  Length mark_lead;  // how far a cut ends past a line when the head's mark stands on it; below
                     // zero: short of it
  std::optional<Length> own_start_lead;  // the same where it starts; left out: as at the end
  // How much farther past a line than it ends a cut must start for a clean corner; may be below
  // zero.
  Length start_extra;
  // From the rail's edge, away from the guide's side, to the line on which the blade enters the
  // board; below zero: toward it. Not measured: a line is brought under the blade's point instead.
  std::optional<Length> line_from_rail;
  // Thickness that the bevel blade cuts through at 45 degrees in one pass, and in two, the first
  // at half the depth. Not measured: one pass, and a plan warns where a board is thicker than any
  // in the table of over-cuts.
  std::optional<Length> deepest_cut, deepest_in_two;
  std::vector<OverCut> over_cuts;  // by rising thickness; at least one
  Length kerf;                     // of the straight cut
  HandlingTimes times;
  LikelyErrors errors;
  int error_price = 20;  // seconds that a millimetre of likely error is worth, on one line or end
  std::optional<Way> prefers;  // taken wherever it is possible; nothing: what costs least
  bool farther_first = true;   // lines farther in are cut first: see engine/cuts/plan/order.h
  friend bool operator==(const CutterProfile&, const CutterProfile&) = default;
};

// How far the blade must go past a line on the back of a board, at a bevel with that run. The table
// is for bevels of 45 degrees, whose run is the board's thickness: the entry itself, else in
// proportion between two entries or to the outermost one, rounded up to a whole tick. At another
// angle the run changes, and what the blade needs beyond it stays: at 90 degrees that alone is
// left. Never below zero.
Length over_cut(const CutterProfile& cutter, Length thickness, Length run);

Length start_lead(const CutterProfile& cutter);

// How many passes a bevel through board of that thickness and run takes: 1 or 2; 0: it is too deep.
// The slanting depth counts, against that of the deepest cut at 45 degrees.
int passes(const CutterProfile& cutter, Length thickness, Length run);

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
