#pragma once

// What is to be known before a plan is cut, found in the plan.

#include "engine/cuts/plan/plan.h"

namespace mullion {

std::vector<PlanNote> notes_on(const CuttingPlan& plan, const Cuts& cuts);

}  // namespace mullion
