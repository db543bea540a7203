#pragma once

// Measures outlines without the engine's own geometry: Beziers by repeated interpolation, distances
// to densely sampled curves.

#include <functional>
#include <vector>

#include "engine/mat/outline.h"

namespace test {

using mullion::Outline;
using mullion::Vector;
using Polyline = std::vector<Vector>;  // closed: the last point is joined to the first

// `count` points of each curve (de Casteljau), and of each line.
Polyline sampled(const Outline& outline, int count);

// `count` points of a closed curve given over 0 <= t < 1.
Polyline sampled(const std::function<Vector(double)>& curve, int count);

double distance_to(const Polyline& line, Vector point);

struct Spread {
  double least = 0, most = 0;
};
// Distances of all points to the line.
Spread distances(const Polyline& points, const Polyline& line);

double polygon_area(const Polyline& line);
bool is_inside(const Polyline& line, Vector point);

}  // namespace test
