#pragma once

// Closed outlines of straight lines and cubic Bezier curves, in exact ticks: x to the right, y
// down.

#include <vector>

#include "engine/layout/layout.h"
#include "engine/mat/curve.h"

namespace mullion {

struct Point {
  Length x, y;
  friend bool operator==(const Point&, const Point&) = default;
};

struct Segment {
  bool curved = false;
  Point control1, control2;  // only when curved
  Point to;
  friend bool operator==(const Segment&, const Segment&) = default;
};

// Starts at `start`; the last segment ends there again.
struct Outline {
  Point start;
  std::vector<Segment> segments;
  friend bool operator==(const Outline&, const Outline&) = default;
};

// The closed polygon through the corners.
Outline polygon(const std::vector<Point>& corners);

// Clockwise, from the upper left corner.
Outline rectangle(const Rect& rect);

// The segments as curves, straight ones too.
std::vector<Cubic> curves_of(const Outline& outline);

// Appends a line or a curve, its points rounded to whole ticks; one that does not move is dropped.
void add_line(Outline& outline, Point to);
void add_curve(Outline& outline, const Cubic& curve);

Point nearest_point(Vector v);
Vector vector_of(Point point);

// Exact to the tick outward: the smallest rectangle of whole ticks that holds the outline.
Rect bounding_box(const Outline& outline);

// Square ticks; positive when the outline runs clockwise as seen. Exact for the curves but for
// rounding in double precision.
double signed_area(const Outline& outline);
double area(const Outline& outline);

// Corners of a polygon that strays from the outline by at most `tolerance` (> 0), the first not
// repeated at the end. They lie on the outline, not on whole ticks.
std::vector<Vector> flatten(const Outline& outline, Length tolerance);

Outline translated(const Outline& outline, Length right, Length down);

// Seen from behind: x becomes width - x. The sense of rotation turns round.
Outline mirrored(const Outline& outline, Length width);

// The same outline, or an open run of segments, the other way round.
Outline reversed(const Outline& outline);

// Whether the point lies inside (nonzero winding of the outline flattened to 1 tick). On the edge
// itself the answer is either.
bool contains(const Outline& outline, Point point);

// Least distance between two edges in ticks, each flattened to `tolerance`; zero where they cross.
double distance(const Outline& a, const Outline& b, Length tolerance);

}  // namespace mullion
