#pragma once

// Plane vectors and cubic Bezier curves in floating point: the ground below outlines. Units are
// ticks, or those of a drawing that is still to be scaled; nothing here is a length that is cut.

#include <cmath>
#include <vector>

namespace mullion {

struct Vector {
  double x = 0, y = 0;

  friend Vector operator+(Vector a, Vector b) { return {a.x + b.x, a.y + b.y}; }
  friend Vector operator-(Vector a, Vector b) { return {a.x - b.x, a.y - b.y}; }
  friend Vector operator*(Vector a, double k) { return {a.x * k, a.y * k}; }
  friend double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y; }
  friend double cross(Vector a, Vector b) { return a.x * b.y - a.y * b.x; }
  friend double norm(Vector a) { return std::hypot(a.x, a.y); }
};

// Whether the line from a to b and that from c to d cross between their ends.
bool cross_each_other(Vector a, Vector b, Vector c, Vector d);

// The same direction with length 1; a zero vector stays zero.
Vector unit(Vector a);

struct Cubic {
  Vector start, control1, control2, end;
};

Vector place(const Cubic& curve, double t);  // 0 <= t <= 1
Vector slope(const Cubic& curve, double t);
Vector bend(const Cubic& curve, double t);  // second derivative

// The straight line as a curve.
Cubic line_curve(Vector start, Vector end);

// Twice the signed area between the curve and the lines from its ends to the origin (exact for
// the curve, by Green's theorem); the sum over a closed outline is twice its area, positive where
// it turns from x to y.
double twice_area(const Cubic& curve);

// Parameters strictly between 0 and 1 where x or y has an extreme.
std::vector<double> extremes(const Cubic& curve);

// In how many equal steps of the parameter a chord stays within `tolerance` of the curve, by the
// bound on the second derivative: |error| <= max|B''| / 8 n^2. At least 1.
std::size_t steps_for(const Cubic& curve, double tolerance);

// Part of a circle from one angle to another (radians, y down: positive turns clockwise as seen),
// in pieces of at most an eighth of a right angle. With handles of 4/3 tan(angle/4) times the
// radius a quarter circle is off by less than 0.00028 of its radius, and the error falls with the
// sixth power of the angle: below 2e-9 of the radius here.
std::vector<Cubic> arc(Vector centre, double radius, double from, double to);

}  // namespace mullion
