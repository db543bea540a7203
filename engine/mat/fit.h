#pragma once

// Few lines and curves in place of many points.

#include "engine/mat/outline.h"

namespace mullion {

// The direction in which a curve leaves its first point and arrives at its last (unit vectors).
struct Tangents {
  Vector leaving, arriving;
};

// Appends cubic Bezier curves through a run of at least two points, from the first (where the
// outline stands) to the last; no point is farther than `tolerance` ticks from them before they
// are rounded to whole ticks. The points must lie close to each other on a smooth curve. Method:
// least squares with repeated re-parameterisation and halving, P. J. Schneider, "An algorithm for
// automatically fitting digitized curves", Graphics Gems, 1990.
void fit_run(Outline& outline, const std::vector<Vector>& points, const Tangents& tangents,
             double tolerance);

// A closed outline through the corners of a polygon: long edges stay lines, sharp corners stay
// corners, and what lies between is fitted as above. An edge is long above `longest_chord` ticks.
Outline fit_polygon(const std::vector<Vector>& corners, double longest_chord, double tolerance);

}  // namespace mullion
