#pragma once

// What must be minded while a plan is cut, as sentences: the usual cautions, and those of the plan.

#include <optional>
#include <string>
#include <vector>

#include "engine/cuts/sheet/told.h"

namespace mullion {

// What is particular to the plan comes first.
std::vector<std::string> cautions(const ToldPlan& plan);

std::string sentence_of(const PlanNote& note, Unit unit, const Locale& locale);

// The one of them about the blade's angle, where it is not the usual one.
std::optional<std::string> blade_caution(const ToldPlan& plan);

}  // namespace mullion
