#pragma once

// What a plan or a run is called, and what it comes to, in a sentence or two.

#include "engine/cuts/run/run.h"
#include "engine/cuts/sheet/told.h"

namespace mullion::cutsheet {

inline constexpr const char* blanks_title =
    mark("Blanks: straight blade, no backing sheet, guide and stops off");
// Before an under-mat's shift.
inline constexpr const char* one_amount =
    mark("Same edges, same order; every setting changed by one amount:");

std::string title_of(const ToldPlan& plan);
std::string title_of(const CuttingRun& run, const Locale& locale);

std::string summary_of(const ToldPlan& plan);
std::string summary_of(const CuttingRun& run, const Locale& locale);

// "Kind 1: 12 mats, 16 x 20 in, cut with two stops: 12 for W-0101".
std::string kind_line(const CuttingRun& run, const RunKind& kind, const Locale& locale);

}  // namespace mullion::cutsheet
