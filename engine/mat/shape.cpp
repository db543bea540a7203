#include "engine/mat/shape.h"

#include <cmath>
#include <numbers>

#include "engine/mat/rect.h"

namespace mullion {
namespace {

struct Vector {
  double x = 0, y = 0;
};

Length nearest(double ticks) {
  return Length::from_ticks(std::llround(ticks));
}
double ticks(Length length) {
  return static_cast<double>(length.ticks());
}
Point point(Vector v) {
  return {nearest(v.x), nearest(v.y)};
}

// Adds a curve that is given by place and derivative over [from, to], in `pieces` equal parts.
template <class Place, class Slope>
void add_curve(Outline& outline, double from, double to, int pieces, Place place, Slope slope) {
  const double step = (to - from) / pieces;
  for (int i = 0; i < pieces; ++i) {
    const double a = from + step * i, b = a + step;
    const Vector start = place(a), end = place(b), leaving = slope(a), arriving = slope(b);
    outline.segments.push_back(
        {true, point({start.x + leaving.x * step / 3, start.y + leaving.y * step / 3}),
         point({end.x - arriving.x * step / 3, end.y - arriving.y * step / 3}), point(end)});
  }
}

// A cubic Hermite arc over an angle h strays from a circle by about radius * h^4 / 384; with 16
// pieces a quarter turn of 2 m radius stays within 0.0005 mm.
constexpr int pieces_a_quarter = 16;

void add_arc(Outline& outline, Vector centre, double radius, double from, double to, int pieces) {
  add_curve(
      outline, from, to, pieces,
      [&](double a) {
        return Vector{centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)};
      },
      [&](double a) {
        return Vector{-radius * std::sin(a), radius * std::cos(a)};
      });
}

void add_line(Outline& outline, Point to) {
  outline.segments.push_back({false, {}, {}, to});
}

Outline rectangle(const Rect& r) {
  return polygon({{r.left, r.top}, {r.right, r.top}, {r.right, r.bottom}, {r.left, r.bottom}});
}

// Parallel curve of an ellipse: each point moved along the normal.
Outline ellipse(const Rect& sight, Length outward) {
  const Vector centre{ticks(sight.left + sight.right) / 2, ticks(sight.top + sight.bottom) / 2};
  const double a = ticks(sight.width()) / 2, b = ticks(sight.height()) / 2, d = ticks(outward);
  const auto place = [=](double t) {
    const double n = std::hypot(b * std::cos(t), a * std::sin(t));
    return Vector{centre.x + a * std::cos(t) + d * b * std::cos(t) / n,
                  centre.y + b * std::sin(t) + d * a * std::sin(t) / n};
  };
  const auto slope = [=](double t) {
    const double n = std::hypot(b * std::cos(t), a * std::sin(t));
    const double stretch = 1 + d * a * b / (n * n * n);
    return Vector{-a * std::sin(t) * stretch, b * std::cos(t) * stretch};
  };
  Outline out;
  out.start = point(place(-std::numbers::pi / 2));
  add_curve(out, -std::numbers::pi / 2, 1.5 * std::numbers::pi, 4 * pieces_a_quarter, place, slope);
  return out;
}

Outline rounded(const Rect& r, Length radius) {
  constexpr double quarter = std::numbers::pi / 2;
  const double k = ticks(radius);
  const double left = ticks(r.left) + k, top = ticks(r.top) + k;
  const double right = ticks(r.right) - k, bottom = ticks(r.bottom) - k;
  Outline out;
  out.start = {r.left + radius, r.top};
  add_line(out, {r.right - radius, r.top});
  add_arc(out, {right, top}, k, -quarter, 0, pieces_a_quarter);
  add_line(out, {r.right, r.bottom - radius});
  add_arc(out, {right, bottom}, k, 0, quarter, pieces_a_quarter);
  add_line(out, {r.left + radius, r.bottom});
  add_arc(out, {left, bottom}, k, quarter, 2 * quarter, pieces_a_quarter);
  add_line(out, {r.left, r.top + radius});
  add_arc(out, {left, top}, k, 2 * quarter, 3 * quarter, pieces_a_quarter);
  return out;
}

// A flat bottom, upright sides and a circular arc on top; where side and arc meet at an angle the
// parallel edges are drawn on until they meet, as two cuts do.
Outline arch(const Rect& sight, Length rise, Length outward) {
  const double half = ticks(sight.width()) / 2, h = ticks(rise), d = ticks(outward);
  const double radius = (half * half + h * h) / (2 * h);
  const Vector centre{ticks(sight.left) + half, ticks(sight.top) + radius};
  const double angle = std::asin(std::min(1.0, (half + d) / (radius + d)));
  const Rect r = outset(sight, outward);
  const double spring = centre.y - (radius + d) * std::cos(angle);
  Outline out;
  out.start = {r.left, nearest(spring)};
  add_arc(out, centre, radius + d, -std::numbers::pi / 2 - angle, -std::numbers::pi / 2 + angle,
          2 * pieces_a_quarter);
  out.segments.back().to = {r.right, nearest(spring)};
  add_line(out, {r.right, r.bottom});
  add_line(out, {r.left, r.bottom});
  add_line(out, out.start);
  return out;
}

Outline stepped(const Rect& r, Length step) {
  const Length left = r.left + step, right = r.right - step;
  const Length top = r.top + step, bottom = r.bottom - step;
  return polygon({{left, r.top},
                  {right, r.top},
                  {right, top},
                  {r.right, top},
                  {r.right, bottom},
                  {right, bottom},
                  {right, r.bottom},
                  {left, r.bottom},
                  {left, bottom},
                  {r.left, bottom},
                  {r.left, top},
                  {left, top}});
}

Outline octagon(const Rect& r, Length leg) {
  return polygon({{r.left + leg, r.top},
                  {r.right - leg, r.top},
                  {r.right, r.top + leg},
                  {r.right, r.bottom - leg},
                  {r.right - leg, r.bottom},
                  {r.left + leg, r.bottom},
                  {r.left, r.bottom - leg},
                  {r.left, r.top + leg}});
}

Length rise_of(const ShapeSpec& shape, const Rect& sight) {
  return shape.rise > Length() ? shape.rise : half_rounded_down(sight.width());
}

std::string misfit(const ShapeSpec& shape, const Rect& sight) {
  const Length shorter = std::min(sight.width(), sight.height());
  switch (shape.kind) {
    case ShapeKind::arch:
      if (rise_of(shape, sight) * 2 > sight.width())
        return "an arch rises by more than half its width";
      if (rise_of(shape, sight) > sight.height()) return "an arch rises by more than its height";
      return {};
    case ShapeKind::rounded:
    case ShapeKind::stepped:
    case ShapeKind::octagon:
      if (shape.corner <= Length()) return "a corner needs a size";
      if (shape.corner * 2 > shorter) return "the corners are larger than half the opening";
      return {};
    default:
      return {};
  }
}

}  // namespace

ShapeSpec shape_at(const ShapeSpec& shape, const Rect& sight, Length outward) {
  ShapeSpec out = shape;
  if (shape.kind == ShapeKind::rounded) out.corner = shape.corner + outward;
  if (shape.kind == ShapeKind::octagon) {
    out.corner = shape.corner + nearest(ticks(outward) * (2 - std::numbers::sqrt2));
  }
  if (shape.kind == ShapeKind::arch) {
    const Outline line = arch(sight, rise_of(shape, sight), outward);
    out.rise = line.start.y - (sight.top - outward);
  }
  return out;
}

tl::expected<Outline, std::string> shape_outline(const ShapeSpec& shape, const Rect& sight,
                                                 Length outward) {
  if (std::string why = misfit(shape, sight); !why.empty()) return tl::unexpected(std::move(why));
  const Rect rect = outset(sight, outward);
  switch (shape.kind) {
    case ShapeKind::rectangle:
      return rectangle(rect);
    case ShapeKind::ellipse:
      return ellipse(sight, outward);
    case ShapeKind::arch:
      return arch(sight, rise_of(shape, sight), outward);
    case ShapeKind::rounded:
      return rounded(rect, shape_at(shape, sight, outward).corner);
    case ShapeKind::stepped:
      return stepped(rect, shape.corner);
    case ShapeKind::octagon:
      return octagon(rect, shape_at(shape, sight, outward).corner);
    case ShapeKind::outline:
      break;
  }
  return tl::unexpected(std::string("an outline from a file cannot be cut yet"));
}

}  // namespace mullion
