#pragma once

// The phrases of a cutting plan, the same on paper and in a terminal. Lengths are said as the
// cutter's scales show them.

#include <string>

#include "engine/cutting/plan/plan.h"

namespace mullion {

std::string edge_text(BoardEdge edge);  // "B (left as seen from the front)"
std::string turn_text(int quarter_turns);
std::string guide_text(const CuttingPlan& plan, const Settings& settings);
std::string near_stop_text(const CuttingPlan& plan, const Settings& settings);
std::string far_stop_text(const CuttingPlan& plan, const Settings& settings);
std::string block_text(const CuttingPlan& plan, const Block& block);

// "opening 1, top line" as seen from the front.
std::string line_text(const BevelCut& cut);
// "start at the far stop, end at pencil line 2 (mark 1/16 in past it)".
std::string ends_text(const CuttingPlan& plan, const BevelCut& cut);
// Freehand: the pencil line, and the block that would do.
std::string freehand_text(const CuttingPlan& plan, const BevelCut& cut);
std::string pencil_text(const CuttingPlan& plan, const PencilLine& line);
std::string skew_text(const CuttingPlan& plan, const SkewCut& cut);
std::string curve_text(const CuttingPlan& plan, const CurveCut& curve);
std::string trim_text(const CuttingPlan& plan, const GrooveTrim& trim);
std::string blank_text(const CuttingPlan& plan, const StraightCut& side);

// "Layer 2: Under-mat, Slate, taped behind, 15 3/4 x 13 3/4 in"
std::string stage_text(const CuttingPlan& plan, const Stage& stage);
// The one amount of a layer: what is changed, in one sentence; empty where there is none.
std::string shift_text(const CuttingPlan& plan, const Stage& stage);
// What is to be done before the first set-up of the stage; empty for the first one.
std::string prepare_text(const CuttingPlan& plan, const Stage& stage);

std::string openings_text(const std::vector<int>& openings);  // "opening 1", "openings 1, 2"
std::string duration_text(std::int64_t seconds);              // "4 min", "1 h 5 min"

}  // namespace mullion
