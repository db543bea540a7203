#pragma once

// In words: why a mat cannot be cut on a cutter (engine/cuts/cuts.h decides it).

#include "engine/cuts/cuts.h"
#include "engine/layout/layout.h"

namespace mullion {

// Errors without a place, in the cutter's unit.
Problems problems_of(const Cuts& cuts);
Problem problem_of(const Refusal& refusal, const Cuts& cuts);

// The same as findings about a job, like those of engine/mat/checks.h, in the job's unit and the
// locale's language:
// "check-cutter-wide", "check-cutter-long", "check-cutter-reach", "check-cutter-thick",
// "check-cutter-deep", "check-cutter-trim", "check-cutter-groove".
Problems check_on_cutter(const Job& job, const Layout& layout, const Cuts& cuts,
                         const Locale& locale = {});

}  // namespace mullion
