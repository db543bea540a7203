#pragma once

// The borders that a customer asks for where a frame is still to be chosen.

#include "engine/job/job.h"

namespace mullion {

// 2 in, in metric jobs 5 cm: what a course sheet asks for on boards to 11 x 14 in
// ("check-borders-least" in engine/mat/check_table.cpp).
Length usual_border(Unit unit);

// Of each side the border that the job states, else the least one it allows, else the usual one.
Sides wished_borders(const Job& job);

Length least_of(const Sides& sides);

}  // namespace mullion
