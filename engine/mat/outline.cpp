#include "engine/mat/outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace mullion {
namespace {

constexpr Length finest = Length::from_ticks(1);

double distance_to_segment(Vector p, Vector a, Vector b) {
  const Vector along = b - a;
  const double square = dot(along, along);
  const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0.0;
  return norm(p - (a + along * t));
}

double distance_of_segments(Vector a, Vector b, Vector c, Vector d) {
  if (cross_each_other(a, b, c, d)) return 0;
  return std::min({distance_to_segment(a, c, d), distance_to_segment(b, c, d),
                   distance_to_segment(c, a, b), distance_to_segment(d, a, b)});
}

template <class Change>
Outline changed(Outline outline, Change change) {
  change(outline.start);
  for (Segment& segment : outline.segments) {
    if (segment.curved) {
      change(segment.control1);
      change(segment.control2);
    }
    change(segment.to);
  }
  return outline;
}

}  // namespace

Outline polygon(const std::vector<Point>& corners) {
  Outline out;
  if (corners.empty()) return out;
  out.start = corners.front();
  for (std::size_t i = 1; i < corners.size(); ++i) {
    out.segments.push_back({false, {}, {}, corners[i]});
  }
  out.segments.push_back({false, {}, {}, corners.front()});
  return out;
}

Outline rectangle(const Rect& r) {
  return polygon({{r.left, r.top}, {r.right, r.top}, {r.right, r.bottom}, {r.left, r.bottom}});
}

Point nearest_point(Vector v) {
  return {Length::from_ticks(std::llround(v.x)), Length::from_ticks(std::llround(v.y))};
}

Vector vector_of(Point point) {
  return {static_cast<double>(point.x.ticks()), static_cast<double>(point.y.ticks())};
}

std::vector<Cubic> curves_of(const Outline& outline) {
  std::vector<Cubic> out;
  Vector at = vector_of(outline.start);
  for (const Segment& segment : outline.segments) {
    const Vector to = vector_of(segment.to);
    out.push_back(segment.curved
                      ? Cubic{at, vector_of(segment.control1), vector_of(segment.control2), to}
                      : line_curve(at, to));
    at = to;
  }
  return out;
}

void add_line(Outline& outline, Point to) {
  const Point from = outline.segments.empty() ? outline.start : outline.segments.back().to;
  if (to != from) outline.segments.push_back({false, {}, {}, to});
}

void add_curve(Outline& outline, const Cubic& curve) {
  const Point from = outline.segments.empty() ? outline.start : outline.segments.back().to;
  const Segment segment{true, nearest_point(curve.control1), nearest_point(curve.control2),
                        nearest_point(curve.end)};
  if (segment.control1 == from && segment.control2 == from && segment.to == from) return;
  outline.segments.push_back(segment);
}

Rect bounding_box(const Outline& outline) {
  Vector least = vector_of(outline.start), most = least;
  const auto include = [&](Vector v) {
    least = {std::min(least.x, v.x), std::min(least.y, v.y)};
    most = {std::max(most.x, v.x), std::max(most.y, v.y)};
  };
  for (const Cubic& curve : curves_of(outline)) {
    include(curve.end);
    for (double t : extremes(curve)) include(place(curve, t));
  }
  // An extreme that is a whole tick must not be pushed to the next one by a rounding error.
  constexpr double slack = 1e-3;
  const auto down = [](double v) {
    return Length::from_ticks(static_cast<std::int64_t>(std::floor(v + slack)));
  };
  const auto up = [](double v) {
    return Length::from_ticks(static_cast<std::int64_t>(std::ceil(v - slack)));
  };
  return {down(least.x), down(least.y), up(most.x), up(most.y)};
}

double signed_area(const Outline& outline) {
  const Vector origin = vector_of(outline.start);
  const std::vector<Cubic> curves = curves_of(outline);
  double twice = 0;
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const Cubic& c = curves[i];
    const Vector start = c.start - origin, end = c.end - origin;
    twice += outline.segments[i].curved
                 ? twice_area({start, c.control1 - origin, c.control2 - origin, end})
                 : cross(start, end);
  }
  return twice / 2;
}

double area(const Outline& outline) {
  return std::abs(signed_area(outline));
}

std::vector<Vector> flatten(const Outline& outline, Length tolerance) {
  std::vector<Vector> out;
  const std::vector<Cubic> curves = curves_of(outline);
  for (std::size_t i = 0; i < curves.size(); ++i) {
    out.push_back(curves[i].start);
    if (!outline.segments[i].curved) continue;
    const std::size_t steps = steps_for(curves[i], static_cast<double>(tolerance.ticks()));
    for (std::size_t k = 1; k < steps; ++k) {
      out.push_back(place(curves[i], static_cast<double>(k) / static_cast<double>(steps)));
    }
  }
  return out;
}

Outline translated(const Outline& outline, Length right, Length down) {
  return changed(outline, [&](Point& point) { point = {point.x + right, point.y + down}; });
}

Outline mirrored(const Outline& outline, Length width) {
  return changed(outline, [&](Point& point) { point.x = width - point.x; });
}

Outline reversed(const Outline& outline) {
  Outline out;
  out.start = outline.segments.empty() ? outline.start : outline.segments.back().to;
  for (std::size_t i = outline.segments.size(); i-- > 0;) {
    const Segment& segment = outline.segments[i];
    const Point to = i == 0 ? outline.start : outline.segments[i - 1].to;
    out.segments.push_back({segment.curved, segment.control2, segment.control1, to});
  }
  return out;
}

bool contains(const Outline& outline, Point point) {
  const std::vector<Vector> corners = flatten(outline, finest);
  const Vector p = vector_of(point);
  int winding = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vector a = corners[i], b = corners[(i + 1) % corners.size()];
    const bool downward = a.y <= p.y && b.y > p.y, upward = a.y > p.y && b.y <= p.y;
    const double side = cross(b - a, p - a);
    if (downward && side > 0) ++winding;
    if (upward && side < 0) --winding;
  }
  return winding != 0;
}

double distance(const Outline& a, const Outline& b, Length tolerance) {
  const std::vector<Vector> p = flatten(a, tolerance), q = flatten(b, tolerance);
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < p.size(); ++i) {
    for (std::size_t j = 0; j < q.size(); ++j) {
      least = std::min(
          least, distance_of_segments(p[i], p[(i + 1) % p.size()], q[j], q[(j + 1) % q.size()]));
    }
  }
  return least;
}

}  // namespace mullion
