#pragma once

// A run of several kinds of mats, each many alike: one plan a kind, and the order in which all
// their set-ups are made so that guide and stops are moved as little as may be.
//
// A scale keeps its setting until it is moved; only moves are saved between kinds, every blank is
// handled as in its own plan. Two orders are tried: kind after kind (the best sequence for up to
// ten kinds, else nearest next), and set-ups of all kinds mixed, each kind's own in their order,
// always the one next that needs least moving. The quicker is taken; `bound` is a proven floor.

#include <string>
#include <vector>

#include "engine/cutting/plan/plan.h"

namespace mullion {

struct RunKind {
  std::string name;
  Mat mat;
  int quantity = 1;
};

struct RunStep {
  int kind = 0, stage = 0, set_up = 0;  // indices
};

struct CuttingRun {
  std::vector<CuttingPlan> plans;  // in the order of the kinds
  std::vector<RunStep> steps;
  bool mixed = false;        // set-ups of several kinds in turn: their blanks wait half cut
  std::int64_t seconds = 0;  // all mats
  std::int64_t alone = 0;    // what the plans take one by one, from cleared scales
  std::int64_t bound = 0;
};

// The quantity of the options is not used. Problems name the kind.
Result<CuttingRun> plan_run(const std::vector<RunKind>& kinds, const CutterProfile& cutter,
                            const PlanOptions& options = {});

std::int64_t minutes(const CuttingRun& run);

}  // namespace mullion
