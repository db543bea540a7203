#pragma once

// Closed outlines of straight lines and cubic Bezier curves, in exact ticks.

#include <vector>

#include "engine/length/length.h"

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

// Seen from behind: x becomes width - x.
Outline mirrored(const Outline& outline, Length width);

}  // namespace mullion
