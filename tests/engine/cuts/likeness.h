#pragma once

// Whether the cuts of a window that has curves or slanting lines are the window's edges.

#include <string>

#include "engine/mat/mat.h"
#include "simulator.h"

namespace mats {

// Outlines are whole ticks and lie within 8 ticks of the true curve (engine/mat/shape.h), on the
// back as on the face; the rest is for chords. 0.015 mm in all.
inline constexpr double whole_ticks = 24;

// Empty: every point of both edges lies on a cut, within `loose` ticks, and no cut goes farther
// into the face that is kept.
std::string unlike(const mullion::Window& window, const std::vector<simulator::Track>& tracks,
                   double loose);

// How far the ellipse lies at most from the parallel of another one, in ticks: two convex curves
// are as far apart as their support functions differ.
double ellipse_off_parallel(const mullion::Rect& ellipse, const mullion::Rect& sight);

}  // namespace mats
