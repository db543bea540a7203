#include "engine/mat/outline.h"

namespace mullion {

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

Outline mirrored(const Outline& outline, Length width) {
  const auto mirror = [width](Point& point) { point.x = width - point.x; };
  Outline out = outline;
  mirror(out.start);
  for (Segment& segment : out.segments) {
    if (segment.curved) {
      mirror(segment.control1);
      mirror(segment.control2);
    }
    mirror(segment.to);
  }
  return out;
}

}  // namespace mullion
