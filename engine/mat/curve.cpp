#include "engine/mat/curve.h"

#include <algorithm>
#include <numbers>

namespace mullion {

bool cross_each_other(Vector a, Vector b, Vector c, Vector d) {
  return cross(b - a, c - a) * cross(b - a, d - a) < 0 &&
         cross(d - c, a - c) * cross(d - c, b - c) < 0;
}
namespace {

// Roots within (0, 1) of a t^2 + b t + c.
void add_roots(double a, double b, double c, std::vector<double>& roots) {
  const auto add = [&roots](double t) {
    if (t > 0 && t < 1) roots.push_back(t);
  };
  if (a == 0) {
    if (b != 0) add(-c / b);
    return;
  }
  const double discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return;
  const double q = -0.5 * (b + std::copysign(std::sqrt(discriminant), b));
  add(q / a);
  if (q != 0) add(c / q);
}

}  // namespace

Vector unit(Vector a) {
  const double length = norm(a);
  return length > 0 ? a * (1 / length) : Vector{};
}

Vector place(const Cubic& c, double t) {
  const double s = 1 - t;
  return c.start * (s * s * s) + c.control1 * (3 * s * s * t) + c.control2 * (3 * s * t * t) +
         c.end * (t * t * t);
}

Vector slope(const Cubic& c, double t) {
  const double s = 1 - t;
  return (c.control1 - c.start) * (3 * s * s) + (c.control2 - c.control1) * (6 * s * t) +
         (c.end - c.control2) * (3 * t * t);
}

Vector bend(const Cubic& c, double t) {
  return (c.control2 - c.control1 * 2 + c.start) * (6 * (1 - t)) +
         (c.end - c.control2 * 2 + c.control1) * (6 * t);
}

Cubic line_curve(Vector start, Vector end) {
  return {start, start + (end - start) * (1.0 / 3), start + (end - start) * (2.0 / 3), end};
}

double twice_area(const Cubic& c) {
  return 0.3 *
         (2 * cross(c.start, c.control1) + cross(c.start, c.control2) + cross(c.start, c.end) / 3 +
          cross(c.control1, c.control2) + cross(c.control1, c.end) + 2 * cross(c.control2, c.end));
}

std::vector<double> extremes(const Cubic& c) {
  std::vector<double> roots;
  const Vector d0 = c.control1 - c.start, d1 = c.control2 - c.control1, d2 = c.end - c.control2;
  const Vector a = d0 - d1 * 2 + d2, b = (d1 - d0) * 2;
  add_roots(a.x, b.x, d0.x, roots);
  add_roots(a.y, b.y, d0.y, roots);
  return roots;
}

std::size_t steps_for(const Cubic& c, double tolerance) {
  const double most = std::max(norm(bend(c, 0)), norm(bend(c, 1)));
  return static_cast<std::size_t>(std::max(1.0, std::ceil(std::sqrt(most / (8 * tolerance)))));
}

std::vector<Cubic> arc(Vector centre, double radius, double from, double to) {
  constexpr double largest_piece = std::numbers::pi / 16;
  const double pieces = std::max(1.0, std::ceil(std::abs(to - from) / largest_piece - 1e-9));
  const double step = (to - from) / pieces;
  const double handle = radius * 4 / 3 * std::tan(step / 4);
  std::vector<Cubic> out;
  for (double i = 0; i < pieces; ++i) {
    const double a = from + step * i, b = a + step;
    const Vector out_a{std::cos(a), std::sin(a)}, out_b{std::cos(b), std::sin(b)};
    const Vector start = centre + out_a * radius, end = centre + out_b * radius;
    out.push_back({start, start + Vector{-out_a.y, out_a.x} * handle,
                   end - Vector{-out_b.y, out_b.x} * handle, end});
  }
  return out;
}

}  // namespace mullion
