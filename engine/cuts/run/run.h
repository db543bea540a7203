#pragma once

// A run: several jobs, each of one or many mats alike, cut together, so that guide and stops are
// moved as little as may be and mats with the same border and size share their settings.
//
// Jobs whose mats are cut alike, board for board, make one kind. Every kind keeps the order of its
// own plan; a scale keeps its setting until it is moved or pushed out of the way, so only moves are
// saved between kinds.
// Two orders are tried: kind after kind (the best sequence for up to ten kinds, else nearest next),
// and set-ups of all kinds mixed, always the one next that needs least moving. They are tried with
// every kind's own quickest way of working and, where the cutter has two stops, with two stops for
// all; the quickest is taken. Lengths are exact ticks. Refused: a mat that the cutter cannot hold
// or cut; problems name the order.

#include <string>
#include <vector>

#include "engine/cuts/plan/plan.h"

namespace mullion {

struct RunJob {
  std::string order, title;
  Mat mat;
  int quantity = 1;
  std::vector<int> copies = {};  // which of the order's mats, from 1; none named: all there are
};

struct RunShare {
  std::string order, title;
  int quantity = 1;
  std::vector<int> copies = {};  // as in RunJob
};

// Mats that are cut alike, for one order or several.
struct RunKind {
  int number = 1;
  std::vector<RunShare> shares;  // in the order of the jobs
  CuttingPlan plan;              // its quantity is that of all shares
};

// One set-up of a kind's plan, for all its mats. Indices.
struct RunWork {
  int kind = 0, stage = 0;
  int set_up = -1;  // -1: the stage has no cut against the rail, only curves
};

// What is cut before guide or stops are set otherwise.
struct RunStep {
  int number = 1;
  Settings settings;
  bool guide_moves = false, near_stop_moves = false, far_stop_moves = false;
  bool spacers_change = false;  // at the guide or at the squaring arm
  std::vector<RunWork> work;
};

// A side of blanks of one size, whatever mats they are for.
struct RunBlank {
  struct Share {
    int kind = 0;  // index
    std::vector<int> layers;
  };
  bool strip = false;   // as in StraightCut
  Length size, length;  // from the squaring arm's stop to the blade; of the cut
  bool by_stop = true;
  std::vector<Share> shares;
};

struct CuttingRun {
  CutterProfile cutter;
  std::vector<RunKind> kinds;
  std::vector<RunBlank> blanks;  // by falling size
  std::vector<RunStep> steps;
  bool mixed = false;        // set-ups of several kinds in turn: their blanks wait half cut
  std::int64_t seconds = 0;  // all mats, blanks included
  std::int64_t alone = 0;    // what the kinds take one by one, from cleared scales
  std::int64_t bound = 0;    // with these plans no order of the set-ups takes less
};

// The quantity of the options is not used. No job: a run without kinds.
Result<CuttingRun> plan_run(const std::vector<RunJob>& jobs, const CutterProfile& cutter,
                            const PlanOptions& options = {});

int mats_in(const CuttingRun& run);

// Whole minutes of work at the cutter, rounded up.
std::int64_t minutes(const CuttingRun& run);

}  // namespace mullion
