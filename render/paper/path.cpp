#include "render/paper/path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mullion::paper {
namespace {

// Of the control points of a Bezier for a quarter of a circle of radius 1: off by less than 0.03 %.
constexpr double quarter_arm = 4.0 / 3.0 * (std::numbers::sqrt2 - 1.0);

}  // namespace

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

bool contains(const Box& outer, const Box& inner) {
  return inner.x >= outer.x && inner.y >= outer.y &&
         inner.x + inner.width <= outer.x + outer.width &&
         inner.y + inner.height <= outer.y + outer.height;
}

Spot Transform::operator()(Spot spot) const {
  return {xx * spot.x + xy * spot.y + x0, yx * spot.x + yy * spot.y + y0};
}

Transform shifted(double x, double y) {
  return {1, 0, 0, 1, x, y};
}

Transform scaled(double factor) {
  return {factor, 0, 0, factor, 0, 0};
}

Transform turned(double degrees) {
  if (degrees == 0) return {};
  if (degrees == 90) return {0, 1, -1, 0, 0, 0};
  if (degrees == -90 || degrees == 270) return {0, -1, 1, 0, 0, 0};
  const double angle = degrees * std::numbers::pi / 180;
  const double c = std::cos(angle), s = std::sin(angle);
  return {c, s, -s, c, 0, 0};
}

Transform then(const Transform& first, const Transform& second) {
  const Spot origin = second({first.x0, first.y0});
  return {second.xx * first.xx + second.xy * first.yx,
          second.yx * first.xx + second.yy * first.yx,
          second.xx * first.xy + second.xy * first.yy,
          second.yx * first.xy + second.yy * first.yy,
          origin.x,
          origin.y};
}

Transform inverse(const Transform& map) {
  const double determinant = map.xx * map.yy - map.xy * map.yx;
  Transform result{map.yy / determinant,
                   -map.yx / determinant,
                   -map.xy / determinant,
                   map.xx / determinant,
                   0,
                   0};
  const Spot origin = result({map.x0, map.y0});
  result.x0 = -origin.x;
  result.y0 = -origin.y;
  return result;
}

Box bounds_of(const Transform& map, const Box& box) {
  const Spot corners[] = {map({box.x, box.y}), map({box.x + box.width, box.y}),
                          map({box.x + box.width, box.y + box.height}),
                          map({box.x, box.y + box.height})};
  Spot low = corners[0], high = corners[0];
  for (const Spot& corner : corners) {
    low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
    high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
  }
  return {low.x, low.y, high.x - low.x, high.y - low.y};
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

Path rounded_rectangle(const Box& box, double radius) {
  const double r = radius, k = r * (1 - quarter_arm);
  const double x = box.x, y = box.y, right = x + box.width, bottom = y + box.height;
  return Path()
      .move_to({x + r, y})
      .line_to({right - r, y})
      .curve_to({right - k, y}, {right, y + k}, {right, y + r})
      .line_to({right, bottom - r})
      .curve_to({right, bottom - k}, {right - k, bottom}, {right - r, bottom})
      .line_to({x + r, bottom})
      .curve_to({x + k, bottom}, {x, bottom - k}, {x, bottom - r})
      .line_to({x, y + r})
      .curve_to({x, y + k}, {x + k, y}, {x + r, y})
      .close();
}

Path circle(Spot centre, double radius) {
  return ellipse({centre.x - radius, centre.y - radius, 2 * radius, 2 * radius});
}

Path ellipse(const Box& box) {
  const double a = box.width / 2, b = box.height / 2, x = box.x + a, y = box.y + b;
  const double i = a * quarter_arm, k = b * quarter_arm;
  return Path()
      .move_to({x + a, y})
      .curve_to({x + a, y + k}, {x + i, y + b}, {x, y + b})
      .curve_to({x - i, y + b}, {x - a, y + k}, {x - a, y})
      .curve_to({x - a, y - k}, {x - i, y - b}, {x, y - b})
      .curve_to({x + i, y - b}, {x + a, y - k}, {x + a, y})
      .close();
}

Path polyline(const std::vector<Spot>& spots) {
  Path path;
  for (const Spot& spot : spots) path.empty() ? path.move_to(spot) : path.line_to(spot);
  return path;
}

Path polygon(const std::vector<Spot>& corners) {
  return polyline(corners).close();
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
