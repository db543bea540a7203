#include "engine/mat/shape.h"

#include <algorithm>
#include <numbers>

#include "engine/locale/locale.h"
#include "engine/mat/fit.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

constexpr double quarter_turn = std::numbers::pi / 2;

Length nearest(double ticks) {
  return Length::from_ticks(std::llround(ticks));
}
double ticks(Length length) {
  return static_cast<double>(length.ticks());
}

void add_arc(Outline& outline, Vector centre, double radius, double from, double to) {
  for (const Cubic& piece : arc(centre, radius, from, to)) add_curve(outline, piece);
}

// The parallel curve of the ellipse x = a cos t, y = b sin t, by the angle of its normal.
struct ParallelEllipse {
  double a, b, outward;

  Vector at(double normal) const {
    const double c = std::cos(normal), s = std::sin(normal);
    const double support = std::hypot(a * c, b * s);
    return {a * a * c / support + outward * c, b * b * s / support + outward * s};
  }
};

// Points from one normal angle to another, close enough for chords within half a tick.
void add_points(const ParallelEllipse& curve, double from, double to, int depth,
                std::vector<Vector>& out) {
  constexpr double sagitta = 0.5;
  constexpr int least_depth = 5, most_depth = 16;
  const Vector a = curve.at(from), b = curve.at(to), middle = curve.at((from + to) / 2);
  const bool close = norm(middle - (a + b) * 0.5) <= sagitta;
  if ((close && depth >= least_depth) || depth == most_depth) {
    out.push_back(b);
    return;
  }
  add_points(curve, from, (from + to) / 2, depth + 1, out);
  add_points(curve, (from + to) / 2, to, depth + 1, out);
}

Outline upside_down(Outline part, Length height) {
  const auto turn = [height](Point& p) { p.y = height - p.y; };
  turn(part.start);
  for (Segment& segment : part.segments) {
    for (Point* p : {&segment.control1, &segment.control2, &segment.to}) turn(*p);
  }
  return part;
}

// The quarter from the top to the right, fitted once and mirrored, so that all four are alike.
Outline ellipse(const Rect& sight, Length outward) {
  const double half_width = ticks(sight.width()) / 2, half_height = ticks(sight.height()) / 2;
  const ParallelEllipse curve{half_width, half_height, ticks(outward)};
  const Vector centre{ticks(sight.left) + half_width, ticks(sight.top) + half_height};
  std::vector<Vector> points{curve.at(-quarter_turn)};
  add_points(curve, -quarter_turn, 0, 0, points);
  for (Vector& point : points) point = point + centre;

  Outline quarter;
  quarter.start = nearest_point(points.front());
  constexpr double fitting = 4;
  fit_run(quarter, points, {{1, 0}, {0, 1}}, fitting);

  Outline out = quarter;
  const auto append = [&out](const Outline& part) {
    out.segments.insert(out.segments.end(), part.segments.begin(), part.segments.end());
  };
  const Outline lower = upside_down(quarter, sight.top + sight.bottom);
  append(reversed(lower));
  append(mirrored(lower, sight.left + sight.right));
  append(reversed(mirrored(quarter, sight.left + sight.right)));
  return out;
}

Outline rounded(const Rect& r, Length radius) {
  const Length left = r.left + radius, top = r.top + radius;
  const Length right = r.right - radius, bottom = r.bottom - radius;
  const double k = ticks(radius);
  Outline out;
  out.start = {left, r.top};
  add_line(out, {right, r.top});
  add_arc(out, vector_of({right, top}), k, -quarter_turn, 0);
  add_line(out, {r.right, bottom});
  add_arc(out, vector_of({right, bottom}), k, 0, quarter_turn);
  add_line(out, {left, r.bottom});
  add_arc(out, vector_of({left, bottom}), k, quarter_turn, 2 * quarter_turn);
  add_line(out, {r.left, top});
  add_arc(out, vector_of({left, top}), k, 2 * quarter_turn, 3 * quarter_turn);
  return out;
}

// A flat bottom, upright sides and a circular arc on top. Where sides and arc meet at an angle
// both parallels run on until they meet.
Outline arch(const Rect& sight, Length rise, Length outward) {
  const double half = ticks(sight.width()) / 2, h = ticks(rise), d = ticks(outward);
  const double radius = (half * half + h * h) / (2 * h);
  const Vector centre{ticks(sight.left) + half, ticks(sight.top) + radius};
  const double angle = std::asin(std::min(1.0, (half + d) / (radius + d)));
  const Rect r = outset(sight, outward);
  const Length spring = nearest(centre.y - (radius + d) * std::cos(angle));
  Outline out;
  out.start = {r.left, spring};
  add_arc(out, centre, radius + d, -quarter_turn - angle, -quarter_turn + angle);
  out.segments.back().to = {r.right, spring};
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
  Outline out;
  out.start = {r.left + leg, r.top};
  add_line(out, {r.right - leg, r.top});
  add_line(out, {r.right, r.top + leg});
  add_line(out, {r.right, r.bottom - leg});
  add_line(out, {r.right - leg, r.bottom});
  add_line(out, {r.left + leg, r.bottom});
  add_line(out, {r.left, r.bottom - leg});
  add_line(out, {r.left, r.top + leg});
  add_line(out, out.start);
  return out;
}

// A half round unless another rise is stated.
Length rise_of(const ShapeSpec& shape, const Rect& sight) {
  return shape.rise > Length() ? shape.rise : half_rounded_down(sight.width());
}

std::string misfit(const ShapeSpec& shape, const Rect& sight) {
  if (sight.width() <= Length() || sight.height() <= Length())
    return mark("the opening has no size");
  switch (shape.kind) {
    case ShapeKind::arch:
      if (rise_of(shape, sight) * 2 > sight.width())
        return mark("the arch rises by more than half its width");
      if (rise_of(shape, sight) > sight.height())
        return mark("the arch rises by more than its height");
      return {};
    case ShapeKind::rounded:
    case ShapeKind::stepped:
    case ShapeKind::octagon:
      if (shape.corner <= Length()) return mark("a corner needs a size");
      if (shape.corner * 2 > std::min(sight.width(), sight.height()))
        return mark("the corners are larger than half the opening");
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
    // Two parallels at 135 degrees: the leg grows by 2 - sqrt 2 of the distance.
    out.corner = shape.corner + nearest(ticks(outward) * (2 - std::numbers::sqrt2));
  }
  if (shape.kind == ShapeKind::arch) {
    const Outline line = arch(sight, rise_of(shape, sight), outward);
    out.rise = line.start.y - (sight.top - outward);
  }
  return out;
}

bool moves_side_by_side(ShapeKind kind) {
  return kind == ShapeKind::rectangle || kind == ShapeKind::stepped;
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
  return tl::unexpected(std::string(mark("a free outline needs its file")));
}

}  // namespace mullion
