#pragma once

// All steps of a plan or of a run, cautions first.

#include "engine/cuts/run/run.h"
#include "render/bench/step.h"

namespace mullion::bench {

std::vector<Step> steps_of(const ToldPlan& plan);
std::vector<Step> steps_of(const CuttingRun& run, const Locale& locale);

}  // namespace mullion::bench
