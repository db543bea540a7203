#include "engine/mat/svg_arc.h"

#include <algorithm>
#include <numbers>

namespace mullion {

// The ellipse is a unit circle after turning and shrinking the axes; the arc is found there.
std::vector<Cubic> curves_of(const EllipticArc& a) {
  const double turn = std::fmod(a.rotation_degrees, 360.0) * std::numbers::pi / 180;
  const double cosine = std::cos(turn), sine = std::sin(turn);
  double rx = std::abs(a.radius_x), ry = std::abs(a.radius_y);
  const auto turned_back = [&](Vector v) {
    return Vector{cosine * v.x + sine * v.y, -sine * v.x + cosine * v.y};
  };
  Vector half = turned_back((a.from - a.to) * 0.5);
  const double reach = std::hypot(half.x / rx, half.y / ry);
  constexpr double flattest = 1e6;  // an ellipse that much too small is a line
  if (!(reach < flattest)) return {line_curve(a.from, a.to)};
  if (reach > 1) {
    rx *= reach;
    ry *= reach;
  }
  const Vector start{half.x / rx, half.y / ry}, end = start * -1;
  const double square = dot(start, start);
  const double away = std::sqrt(std::max(0.0, 1 - square) / square);
  const Vector centre = Vector{start.y, -start.x} * (a.large == a.sweep ? -away : away);

  const Vector first = start - centre, last = end - centre;
  const double from = std::atan2(first.y, first.x);
  double angle = std::atan2(cross(first, last), dot(first, last));
  if (a.sweep && angle < 0) angle += 2 * std::numbers::pi;
  if (!a.sweep && angle > 0) angle -= 2 * std::numbers::pi;

  const Vector middle = (a.from + a.to) * 0.5;
  const auto map = [&](Vector v) {
    const Vector scaled{v.x * rx, v.y * ry};
    return middle +
           Vector{cosine * scaled.x - sine * scaled.y, sine * scaled.x + cosine * scaled.y};
  };
  std::vector<Cubic> out;
  Vector here = a.from;
  for (const Cubic& c : arc(centre, 1, from, from + angle)) {
    out.push_back({here, map(c.control1), map(c.control2), map(c.end)});
    here = out.back().end;
  }
  out.back().end = a.to;
  return out;
}

}  // namespace mullion
