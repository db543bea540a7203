#pragma once

// Elliptic arcs of SVG paths as cubic Bezier curves (SVG 1.1, F.6: implementation notes).

#include "engine/mat/curve.h"

namespace mullion {

struct EllipticArc {
  Vector from, to;                    // not the same point
  double radius_x = 0, radius_y = 0;  // not zero; too small ones grow until the arc fits
  double rotation_degrees = 0;
  bool large = false, sweep = false;
};

std::vector<Cubic> curves_of(const EllipticArc& arc);

}  // namespace mullion
