#pragma once

// A cutting plan as plain text for a terminal, at most 100 columns where lengths allow.

#include <string>

#include "engine/cuts/plan/plan.h"

namespace mullion {

std::string plan_to_text(const CuttingPlan& plan);

// The lines to pencil on the back of every layer, and nothing else.
std::string marks_to_text(const CuttingPlan& plan);

}  // namespace mullion
