#pragma once

// The phrases of a cutting plan, the same on paper and in a terminal. Lengths are said as the
// cutter's scales show them. What paper says is in the plan's locale; what only a terminal says is
// English.

#include <string>

#include "engine/cuts/sheet/told.h"

namespace mullion {

std::string edge_text(BoardEdge edge);  // "B (left as seen from the front)"
// "A", or "A of the top mat" where that is the edge to measure from.
std::string edge_name(const Stage& stage, BoardEdge edge, const Locale& locale = {});
std::string turn_text(int quarter_turns, const Locale& locale = {});
// The turn, or which edge to lay away from the operator where the board is laid anew.
std::string lay_text(const ToldPlan& plan, BoardEdge at_guide, bool laid, int turns);
// "Boards lie face down ...; red: cut now, pulled toward you."
std::string how_boards_lie(const CutterProfile& cutter, const Locale& locale);
// What the chosen way takes, what comes next, and why.
std::string chosen_text(const CuttingPlan& plan, const Locale& locale);
// Spacers to cut from scrap first; empty where there are none.
std::string gauges_text(const ToldPlan& plan);
std::string guide_text(const ToldPlan& plan, const Settings& settings);
std::string near_stop_text(const ToldPlan& plan, const Settings& settings);
std::string far_stop_text(const ToldPlan& plan, const Settings& settings);
std::string block_text(const ToldPlan& plan, const Block& block);
std::string arm_block_text(const ToldPlan& plan, Length width);
// "guide 3 in | near stop 3 in | far stop 13 in", and the block.
std::string settings_text(const ToldPlan& plan, const Settings& settings);

// "opening 1, top line" as seen from the front.
std::string line_text(const BevelCut& cut);
// "start at the far stop, end at pencil line 2 (mark 1/16 in past it)".
std::string ends_text(const ToldPlan& plan, const BevelCut& cut);

// Where the head's mark stands at every end that is brought to a line by eye, if it is the same
// everywhere; then it is said once, by by_eye_text, and brief_ends_text leaves it out.
std::optional<Length> common_past(const Stage& stage);
std::string by_eye_text(const ToldPlan& plan, const Stage& stage);
// "start at the line 2 in from A, end at cut 4"; empty where stops or the drawn lines show it.
std::string brief_ends_text(const ToldPlan& plan, const Stage& stage, const BevelCut& cut);
// Whether cuts tell between which lines they run; else they run along drawn lines, corner to corner.
bool lines_are_named(const ToldPlan& plan, const Stage& stage);
// Freehand: which pencil line to bring where; empty where the guide is used.
std::string freehand_text(const ToldPlan& plan, const Stage& stage, const BevelCut& cut);
// To which mark a line is brought: "1/4 in from the rail's edge, away from the guide's side".
std::string line_up_text(const ToldPlan& plan);
// The same as a sentence for all freehand cuts of a stage; empty where there are none.
std::string freehand_lines_text(const ToldPlan& plan, const Stage& stage);
// Guide and block that would do for each distance beyond the guide; empty where there is none.
std::string outside_blocks_text(const ToldPlan& plan, const Stage& stage);

// The pencil lines at one distance from one edge, drawn in one go.
struct Marking {
  BoardEdge edge = BoardEdge::top;
  Length distance;
  std::vector<int> lines, openings;  // numbers
};
// By edge and distance; those that are drawn with a rule.
std::vector<Marking> markings_of(const Stage& stage);
std::vector<Marking> all_markings_of(const Stage& stage);
std::string marking_text(const ToldPlan& plan, const Stage& stage, const Marking& marking);
// One for each setting of the guide: "guide 3 in: draw along the rail with edges A, B at the
// guide".
std::vector<std::string> guide_marking_texts(const ToldPlan& plan, const Stage& stage);
// "check: 3 in from A"; said at the cut that it follows.
std::string check_text(const ToldPlan& plan, const Stage& stage, const Check& check);
// Those that come before the first cut (0), after a cut of that number, or at the end (-1).
std::vector<std::string> checks_at(const ToldPlan& plan, const Stage& stage, int cut);
// A spacer's strips and square cuts.
std::vector<std::string> spacer_texts(const ToldPlan& plan, const Stage& stage);

std::string skew_text(const ToldPlan& plan, const Stage& stage, const SkewCut& cut);
// Of edge A, to a tenth: an angle stop is not set finer.
std::string degrees_to_rail(const SkewCut& cut);
// "9  opening 1: 3 in from A, 5 in from B to ..."
std::string skew_brief_text(const ToldPlan& plan, const Stage& stage, const SkewCut& cut);
// Where the mark stands at the ends of all slanting cuts of a stage: "mark onto both points". Empty
// where they differ: then each cut tells its own.
std::string skew_marks_text(const ToldPlan& plan, const Stage& stage);
// One for each curve; an oval set like one before it says so.
std::vector<std::string> curve_texts(const ToldPlan& plan, const Stage& stage);
std::string trim_text(const ToldPlan& plan, const GrooveTrim& trim);
// "arm stop 20 in: cut 16 in long"
std::string blank_size_text(const CutterProfile& cutter, const StraightCut& side,
                            const Locale& locale);
// "arm stop 20 in: cut 16 in long, for layers 1, 2"
std::string blank_text(const ToldPlan& plan, const StraightCut& side);
// One for each size of blank: its strip, and the blank off it.
std::vector<std::string> blank_pair_texts(const ToldPlan& plan);

// "Layer 2: Under-mat, Slate, taped behind, 15 3/4 x 13 3/4 in"
std::string stage_text(const ToldPlan& plan, const Stage& stage);
// "Layer 2: Under-mat, Slate"
std::string stage_brief_text(const Stage& stage, const Locale& locale);
// The one amount of a layer: what is changed, in one sentence; empty where there is none.
std::string shift_text(const ToldPlan& plan, const Stage& stage);
// What is to be done before the first set-up of the stage; empty for the first one.
std::string prepare_text(const ToldPlan& plan, const Stage& stage);

std::string layers_text(const std::vector<int>& layers, const Locale& locale);  // "layers 1, 2"
std::string openings_text(const std::vector<int>& openings, const Locale& locale = {});
std::string duration_text(std::int64_t seconds, const Locale& locale = {});  // "1 h 5 min"

}  // namespace mullion
