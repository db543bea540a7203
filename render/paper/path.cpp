#include "render/paper/path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mullion::paper {

Box grown(const Box& box, double by) {
  return {box.x - by, box.y - by, box.width + 2 * by, box.height + 2 * by};
}

bool overlap(const Box& a, const Box& b) {
  return a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height &&
         b.y <= a.y + a.height;
}

Box united(const Box& a, const Box& b) {
  const double left = std::min(a.x, b.x), top = std::min(a.y, b.y);
  return {left, top, std::max(a.x + a.width, b.x + b.width) - left,
          std::max(a.y + a.height, b.y + b.height) - top};
}

Box common(const Box& a, const Box& b) {
  const double left = std::max(a.x, b.x), top = std::max(a.y, b.y);
  return {left, top, std::max(0.0, std::min(a.x + a.width, b.x + b.width) - left),
          std::max(0.0, std::min(a.y + a.height, b.y + b.height) - top)};
}

Path& Path::move_to(Spot to) {
  steps_.push_back({Kind::move, to, {}, {}});
  return *this;
}

Path& Path::line_to(Spot to) {
  steps_.push_back({Kind::line, to, {}, {}});
  return *this;
}

Path& Path::curve_to(Spot control1, Spot control2, Spot to) {
  steps_.push_back({Kind::curve, to, control1, control2});
  return *this;
}

Path& Path::close() {
  steps_.push_back({Kind::close, {}, {}, {}});
  return *this;
}

Path& Path::append(const Path& other) {
  steps_.insert(steps_.end(), other.steps_.begin(), other.steps_.end());
  return *this;
}

Box bounds_of(const Path& path) {
  if (path.empty()) return {};
  Spot low{HUGE_VAL, HUGE_VAL}, high{-HUGE_VAL, -HUGE_VAL};
  const auto include = [&](Spot spot) {
    low = {std::min(low.x, spot.x), std::min(low.y, spot.y)};
    high = {std::max(high.x, spot.x), std::max(high.y, spot.y)};
  };
  for (const Path::Step& step : path.steps()) {
    if (step.kind == Path::Kind::close) continue;
    include(step.to);
    if (step.kind != Path::Kind::curve) continue;
    include(step.control1);
    include(step.control2);
  }
  return {low.x, low.y, high.x - low.x, high.y - low.y};
}

Path line(Spot from, Spot to) {
  return Path().move_to(from).line_to(to);
}

Path rectangle(const Box& box) {
  return Path()
      .move_to({box.x, box.y})
      .line_to({box.x + box.width, box.y})
      .line_to({box.x + box.width, box.y + box.height})
      .line_to({box.x, box.y + box.height})
      .close();
}

Path circle(Spot centre, double radius) {
  // The usual four Beziers: off by less than 0.03 % of the radius.
  const double r = radius, k = r * 4.0 / 3.0 * (std::numbers::sqrt2 - 1.0);
  const auto [x, y] = centre;
  return Path()
      .move_to({x + r, y})
      .curve_to({x + r, y + k}, {x + k, y + r}, {x, y + r})
      .curve_to({x - k, y + r}, {x - r, y + k}, {x - r, y})
      .curve_to({x - r, y - k}, {x - k, y - r}, {x, y - r})
      .curve_to({x + k, y - r}, {x + r, y - k}, {x + r, y})
      .close();
}

Path polyline(const std::vector<Spot>& spots) {
  Path path;
  for (const Spot& spot : spots) path.empty() ? path.move_to(spot) : path.line_to(spot);
  return path;
}

Spot to_spot(const Point& point) {
  return {points(point.x), points(point.y)};
}

Box to_box(const Rect& rect) {
  return {points(rect.left), points(rect.top), points(rect.width()), points(rect.height())};
}

Path trace(const Rect& rect) {
  return rectangle(to_box(rect));
}

Path trace(const Outline& outline) {
  Path path;
  path.move_to(to_spot(outline.start));
  for (const Segment& segment : outline.segments) {
    const bool closing = &segment == &outline.segments.back() && segment.to == outline.start;
    if (segment.curved) {
      path.curve_to(to_spot(segment.control1), to_spot(segment.control2), to_spot(segment.to));
    } else if (!closing) {
      path.line_to(to_spot(segment.to));
    }
  }
  return path.close();
}

Path transformed(const Path& path, const Transform& map) {
  Path result;
  for (const Path::Step& step : path.steps()) {
    switch (step.kind) {
      case Path::Kind::move:
        result.move_to(map(step.to));
        break;
      case Path::Kind::line:
        result.line_to(map(step.to));
        break;
      case Path::Kind::curve:
        result.curve_to(map(step.control1), map(step.control2), map(step.to));
        break;
      case Path::Kind::close:
        result.close();
        break;
    }
  }
  return result;
}

}  // namespace mullion::paper
