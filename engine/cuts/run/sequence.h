#pragma once

// In what order the set-ups of several plans are made, and what that saves.

#include "engine/cuts/run/run.h"

namespace mullion {

struct Sequence {
  std::vector<RunWork> work;  // every set-up of every plan once
  bool mixed = false;
  std::int64_t moves = 0;        // seconds of guide and stop moves, from cleared scales
  std::int64_t own_moves = 0;    // of the plans one by one
  std::int64_t least_moves = 0;  // each setting made once
};

Sequence sequence_of(const std::vector<CuttingPlan>& plans, const HandlingTimes& times);

const Settings& settings_of(const CuttingPlan& plan, const RunWork& work);

}  // namespace mullion
