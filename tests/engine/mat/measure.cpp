#include "tests/engine/mat/measure.h"

#include <algorithm>
#include <cmath>

namespace test {
namespace {

Vector between(Vector a, Vector b, double t) {
  return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

Vector of(mullion::Point p) {
  return {static_cast<double>(p.x.ticks()), static_cast<double>(p.y.ticks())};
}

}  // namespace

Polyline sampled(const Outline& outline, int count) {
  Polyline out;
  Vector at = of(outline.start);
  for (const mullion::Segment& segment : outline.segments) {
    const Vector to = of(segment.to);
    for (int i = 0; i < count; ++i) {
      const double t = static_cast<double>(i) / count;
      if (!segment.curved) {
        out.push_back(between(at, to, t));
        continue;
      }
      const Vector a = of(segment.control1), b = of(segment.control2);
      const Vector p = between(at, a, t), q = between(a, b, t), r = between(b, to, t);
      out.push_back(between(between(p, q, t), between(q, r, t), t));
    }
    at = to;
  }
  return out;
}

Polyline sampled(const std::function<Vector(double)>& curve, int count) {
  Polyline out;
  for (int i = 0; i < count; ++i) out.push_back(curve(static_cast<double>(i) / count));
  return out;
}

double distance_to(const Polyline& line, Vector p) {
  double least = INFINITY;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vector a = line[i], b = line[(i + 1) % line.size()];
    const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
    double t = square > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0;
    t = std::clamp(t, 0.0, 1.0);
    least = std::min(least, std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
  }
  return least;
}

Spread distances(const Polyline& points, const Polyline& line) {
  Spread out{INFINITY, 0};
  for (Vector p : points) {
    const double d = distance_to(line, p);
    out = {std::min(out.least, d), std::max(out.most, d)};
  }
  return out;
}

double polygon_area(const Polyline& line) {
  double twice = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vector a = line[i], b = line[(i + 1) % line.size()];
    twice += a.x * b.y - a.y * b.x;
  }
  return twice / 2;
}

bool is_inside(const Polyline& line, Vector p) {
  bool inside = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Vector a = line[i], b = line[(i + 1) % line.size()];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) {
      inside = !inside;
    }
  }
  return inside;
}

}  // namespace test
