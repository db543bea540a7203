#include "engine/mat/fit.h"

#include <algorithm>
#include <span>

namespace mullion {
namespace {

using Points = std::span<const Vector>;

// A vertex at which a polygon turns by more than this (radians) is a corner and not part of a
// curve.
constexpr double corner_turn = 0.3;
constexpr int rounds_of_fitting = 4;

std::vector<double> chord_parameters(Points points) {
  std::vector<double> out{0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    out.push_back(out.back() + norm(points[i] - points[i - 1]));
  }
  for (double& t : out) t /= out.back();
  return out;
}

// The curve with given end tangents that is nearest to the points at the given parameters.
Cubic least_squares(Points points, const std::vector<double>& parameters, const Tangents& ends) {
  const Vector first = points.front(), last = points.back();
  double c00 = 0, c01 = 0, c11 = 0, x0 = 0, x1 = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double t = parameters[i], s = 1 - t;
    const Vector a0 = ends.leaving * (3 * s * s * t), a1 = ends.arriving * (-3 * s * t * t);
    const Vector base = first * (s * s * s + 3 * s * s * t) + last * (3 * s * t * t + t * t * t);
    const Vector rest = points[i] - base;
    c00 += dot(a0, a0);
    c01 += dot(a0, a1);
    c11 += dot(a1, a1);
    x0 += dot(a0, rest);
    x1 += dot(a1, rest);
  }
  const double determinant = c00 * c11 - c01 * c01;
  const double chord = norm(last - first);
  double leave = 0, arrive = 0;
  if (determinant > 1e-12 * c00 * c11) {
    leave = (x0 * c11 - x1 * c01) / determinant;
    arrive = (c00 * x1 - c01 * x0) / determinant;
  }
  const double least = 1e-3 * chord;
  if (leave < least || arrive < least) leave = arrive = chord / 3;
  return {first, first + ends.leaving * leave, last - ends.arriving * arrive, last};
}

// One Newton step toward the parameter of the curve's point nearest to each point.
void refine(Points points, const Cubic& curve, std::vector<double>& parameters) {
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    const double t = parameters[i];
    const Vector away = place(curve, t) - points[i], d1 = slope(curve, t), d2 = bend(curve, t);
    const double denominator = dot(d1, d1) + dot(away, d2);
    if (denominator > 0) parameters[i] = std::clamp(t - dot(away, d1) / denominator, 0.0, 1.0);
  }
}

double worst(Points points, const Cubic& curve, const std::vector<double>& parameters) {
  double most = 0;
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    most = std::max(most, norm(place(curve, parameters[i]) - points[i]));
  }
  return most;
}

// Tangent at b of the circle through three points in their order.
Vector circle_tangent(Vector a, Vector b, Vector c) {
  const Vector in = b - a, out = c - b;
  const double in_length = norm(in), out_length = norm(out);
  if (in_length == 0 || out_length == 0) return unit(c - a);
  return unit(in * (out_length / in_length) + out * (in_length / out_length));
}

// At the first of three points.
Vector end_tangent(Vector a, Vector b, Vector c) {
  const Vector chord = unit(b - a), middle = circle_tangent(a, b, c);
  return unit(chord * (2 * dot(chord, middle)) - middle);
}

Tangents guess_tangents(Points points) {
  const std::size_t n = points.size();
  if (n < 3) return {unit(points.back() - points.front()), unit(points.back() - points.front())};
  return {end_tangent(points[0], points[1], points[2]),
          end_tangent(points[n - 1], points[n - 2], points[n - 3]) * -1};
}

void fit(Outline& outline, Points points, const Tangents& ends, double tolerance) {
  if (points.size() == 2) {
    add_line(outline, nearest_point(points.back()));
    return;
  }
  std::vector<double> parameters = chord_parameters(points);
  for (int round = 0; round < rounds_of_fitting; ++round) {
    const Cubic curve = least_squares(points, parameters, ends);
    refine(points, curve, parameters);
    if (worst(points, curve, parameters) <= tolerance) {
      add_curve(outline, curve);
      return;
    }
  }
  const std::size_t middle = points.size() / 2;
  const Vector tangent = circle_tangent(points[middle - 1], points[middle], points[middle + 1]);
  fit(outline, points.first(middle + 1), {ends.leaving, tangent}, tolerance);
  fit(outline, points.subspan(middle), {tangent, ends.arriving}, tolerance);
}

// Where runs begin and end.
std::vector<std::size_t> breaks_of(const std::vector<Vector>& corners, double longest_chord) {
  std::vector<std::size_t> out;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vector in = corners[i] - corners[(i + n - 1) % n],
                 ahead = corners[(i + 1) % n] - corners[i];
    const double turn = std::abs(std::atan2(cross(in, ahead), dot(in, ahead)));
    if (turn > corner_turn || norm(in) > longest_chord || norm(ahead) > longest_chord) {
      out.push_back(i);
    }
  }
  return out;
}

}  // namespace

void fit_run(Outline& outline, const std::vector<Vector>& points, const Tangents& tangents,
             double tolerance) {
  fit(outline, points, tangents, tolerance);
}

Outline fit_polygon(const std::vector<Vector>& corners, double longest_chord, double tolerance) {
  std::vector<std::size_t> breaks = breaks_of(corners, longest_chord);
  const bool smooth = breaks.empty();
  if (smooth) breaks.push_back(0);
  const std::size_t n = corners.size();
  Outline out;
  out.start = nearest_point(corners[breaks.front()]);
  for (std::size_t i = 0; i < breaks.size(); ++i) {
    const std::size_t from = breaks[i];
    const std::size_t to = i + 1 < breaks.size() ? breaks[i + 1] : breaks.front() + n;
    std::vector<Vector> run;
    for (std::size_t k = from; k <= to; ++k) run.push_back(corners[k % n]);
    Tangents ends = guess_tangents(run);
    if (smooth) {
      ends.leaving = circle_tangent(corners[n - 1], corners[0], corners[1]);
      ends.arriving = ends.leaving;
    }
    fit(out, run, ends, tolerance);
  }
  add_line(out, out.start);
  return out;
}

}  // namespace mullion
