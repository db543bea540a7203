#pragma once

// What a job says of its reveals, opening by opening, and the run of its bevel.

#include "engine/job/job.h"

namespace mullion {

// The reveal of a layer (from 2) in an opening: the opening's own, else the layer's.
Sides reveal_of(const Job& job, const Opening& opening, int layer_number);

// How far a layer's cut line lies inside the line of the layer above it: reveal plus the bevel's
// run, or the reveal alone where the job reads reveals from line to line. Zero on every side where
// the layer shows no edge, or where none is above it: for the first layer, for a layer that is not
// cut for the opening, and between openings that share a window. The opening is the job's own.
Sides line_inset(const Job& job, const Opening& opening, int layer_number);

// How far the top mat's back edge lies outside the lowest layer's back edge, for one opening.
Sides reveal_stack(const Job& job, const Opening& opening);

// Run of the bevel for a board: thickness / tan(angle), to the nearest tick; exact at 45 degrees.
Length bevel_run(Length thickness, int bevel_millidegrees);

}  // namespace mullion
