#include "engine/mat/shape.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numbers>

#include "engine/mat/rect.h"
#include "tests/engine/mat/measure.h"

using namespace mullion;
using namespace test;

namespace {

constexpr double pi = std::numbers::pi;
const double bound = static_cast<double>(outline_tolerance.ticks());

const Rect portrait{inches(3), inches(3), inches(11), inches(13)};  // 8 x 10 in

ShapeSpec shape(ShapeKind kind, Length corner = {}, Length rise = {}) {
  ShapeSpec out;
  out.kind = kind;
  out.corner = corner;
  out.rise = rise;
  return out;
}

Outline edge(const ShapeSpec& spec, const Rect& sight, Length outward) {
  const auto out = shape_outline(spec, sight, outward);
  if (!out) throw std::runtime_error(out.error());
  return *out;
}

// Dense both along the flat sides and round the tips: equal steps of the parameter and of the
// normal's angle, which is atan2(sin t / b, cos t / a).
std::vector<double> ellipse_parameters(double a, double b) {
  std::vector<double> out;
  for (int i = 0; i < 4'000; ++i) out.push_back(i / 4'000.0);
  for (int i = 0; i < 1'000; ++i) {
    const double normal = 2 * pi * i / 1'000;
    const double t = std::atan2(b * std::sin(normal), a * std::cos(normal)) / (2 * pi);
    out.push_back(t < 0 ? t + 1 : t);
  }
  std::sort(out.begin(), out.end());
  return out;
}

Polyline sampled_at(const std::function<Vector(double)>& curve, const std::vector<double>& at) {
  Polyline out;
  for (double t : at) out.push_back(curve(t));
  return out;
}

double ticks(Length length) {
  return static_cast<double>(length.ticks());
}

}  // namespace

TEST_CASE("the half of a hundredth of a millimetre is the bound on every curve") {
  CHECK(outline_tolerance * 2 == Length::from_ticks(ticks_per_mm / 100));
}

TEST_CASE("the parallel of an ellipse is the true parallel curve and no ellipse") {
  struct Case {
    Length width, height, outward;
  };
  const Case cases[] = {{inches(8), inches(10), sixty_fourths(4)},
                        {inches(8), inches(10), sixty_fourths(40)},
                        {inches(20), inches(4), inches(1)},
                        {inches(2), inches(30), sixty_fourths(8)},
                        {millimetres(1), millimetres(900), millimetres(2)},
                        {inches(60), inches(40), inches(3)},
                        {Length::from_ticks(123457), Length::from_ticks(98765), inches(1)}};
  for (const Case& c : cases) {
    const Rect sight{inches(3), inches(3), inches(3) + c.width, inches(3) + c.height};
    const double a = ticks(c.width) / 2, b = ticks(c.height) / 2, d = ticks(c.outward);
    const Vector centre{ticks(sight.left) + a, ticks(sight.top) + b};
    // The published parametric form: (a + b d / n) cos t, (b + a d / n) sin t with
    // n = hypot(a sin t, b cos t) (any text on parallel curves; derived again here).
    const auto true_parallel = [&](double t) {
      const double x = std::cos(2 * pi * t), y = std::sin(2 * pi * t);
      const double n = std::hypot(a * y, b * x);
      return Vector{centre.x + (a + b * d / n) * x, centre.y + (b + a * d / n) * y};
    };
    const Outline outline = edge(shape(ShapeKind::ellipse), sight, c.outward);
    const Polyline truth = sampled_at(true_parallel, ellipse_parameters(a, b));
    CAPTURE(ticks(c.width), ticks(c.height), d, outline.segments.size());
    CHECK(distances(sampled(outline, 12), truth).most < bound);
    const Polyline drawn = sampled(outline, 200);
    CHECK(distances(sampled(true_parallel, 200), drawn).most < bound);
    CHECK(bounding_box(outline) == outset(sight, c.outward));
    CHECK(outline.segments.size() < 80);
  }
}

TEST_CASE(
    "an ellipse's parallel lies off the larger ellipse by more than a tenth of a millimetre") {
  const Outline outline = edge(shape(ShapeKind::ellipse), portrait, inches(1));
  const auto larger = [](double t) {
    return Vector{ticks(inches(7)) + ticks(inches(5)) * std::cos(2 * pi * t),
                  ticks(inches(8)) + ticks(inches(6)) * std::sin(2 * pi * t)};
  };
  CHECK(distances(sampled(outline, 20), sampled(larger, 5'000)).most > ticks(millimetres(1)) / 10);
}

TEST_CASE("a circle stays a circle, in a box that is exact") {
  const Rect sight{inches(1), inches(1), inches(9), inches(9)};
  for (Length outward : {Length(), sixty_fourths(4), inches(1)}) {
    const Outline outline = edge(shape(ShapeKind::ellipse), sight, outward);
    const double radius = ticks(inches(4) + outward);
    for (Vector p : sampled(outline, 50)) {
      CHECK(std::abs(std::hypot(p.x - ticks(inches(5)), p.y - ticks(inches(5))) - radius) < bound);
    }
    CHECK(bounding_box(outline) == outset(sight, outward));
    CHECK(area(outline) == Approx(pi * radius * radius).epsilon(1e-5));
  }
}

TEST_CASE("a rectangle's edge moves out by the run on every side, exactly") {
  CHECK(edge({}, portrait, sixty_fourths(4)) == rectangle(outset(portrait, sixty_fourths(4))));
}

TEST_CASE("a rounded corner's radius grows by the run") {
  const ShapeSpec spec = shape(ShapeKind::rounded, inches(1));
  CHECK(shape_at(spec, portrait, sixty_fourths(4)).corner == inches(1) + sixty_fourths(4));
  const Polyline original = sampled(edge(spec, portrait, Length()), 400);
  const Outline outline = edge(spec, portrait, sixty_fourths(20));
  const Spread spread = distances(sampled(outline, 30), original);
  CHECK(spread.least > ticks(sixty_fourths(20)) - bound);
  CHECK(spread.most < ticks(sixty_fourths(20)) + bound);
  const double w = ticks(inches(8)), h = ticks(inches(10)), r = ticks(inches(1));
  CHECK(area(edge(spec, portrait, Length())) == Approx(w * h - (4 - pi) * r * r).epsilon(1e-6));
}

TEST_CASE("a half round arch is half a circle on a rectangle") {
  const ShapeSpec spec = shape(ShapeKind::arch);
  const double r = ticks(inches(4));
  const Outline sight = edge(spec, portrait, Length());
  CHECK(area(sight) == Approx(pi * r * r / 2 + 2 * r * ticks(inches(6))).epsilon(1e-6));
  CHECK(bounding_box(sight) == portrait);
  const Outline outline = edge(spec, portrait, inches(1));
  const Polyline fine = sampled(sight, 300);
  CHECK(bounding_box(outline) == outset(portrait, inches(1)));
  // Everything but the two lower corners, which are mitred, is at the distance.
  for (Vector p : sampled(outline, 30)) {
    if (p.y > ticks(portrait.bottom)) continue;
    CHECK(std::abs(distance_to(fine, p) - ticks(inches(1))) < bound);
  }
}

TEST_CASE("the cuts of a segmental arch meet where sides and arc would run on to") {
  const ShapeSpec spec = shape(ShapeKind::arch, {}, inches(1));
  const Outline sight = edge(spec, portrait, Length());
  const Length d = sixty_fourths(32);
  const Outline outline = edge(spec, portrait, d);
  CHECK(bounding_box(outline) == outset(portrait, d));
  // Radius of the arc over a chord of 8 in with a rise of 1 in: (4^2 + 1) / 2 = 8.5 in.
  const Vector centre{ticks(inches(7)), ticks(inches(3)) + 8.5 * 40640};
  const double spring = ticks(outline.start.y);
  for (Vector p : sampled(outline, 30)) {
    if (p.y > spring) continue;
    CHECK(std::abs(std::hypot(p.x - centre.x, p.y - centre.y) - 9 * 40640) < bound);
  }
  CHECK(std::abs(std::hypot(4.5 * 40640, centre.y - spring) - 9 * 40640) < 1);
}

TEST_CASE("stepped corners keep their step, an octagon's leg grows by 2 - sqrt 2 of the run") {
  const Length d = sixty_fourths(16), step = sixty_fourths(40);
  const Outline stepped = edge(shape(ShapeKind::stepped, step), portrait, d);
  CHECK(stepped.segments.size() == 12);
  CHECK(area(stepped) ==
        ticks(inches(8) + d * 2) * ticks(inches(10) + d * 2) - 4 * ticks(step) * ticks(step));
  const Outline octagon = edge(shape(ShapeKind::octagon, inches(2)), portrait, d);
  const Polyline original = sampled(edge(shape(ShapeKind::octagon, inches(2)), portrait, {}), 1);
  for (std::size_t i = 0; i < octagon.segments.size(); ++i) {
    const Polyline corners = sampled(octagon, 1);
    const Vector a = corners[i], b = corners[(i + 1) % corners.size()];
    const Vector middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    CHECK(std::abs(distance_to(original, middle) - ticks(d)) <= 1);
  }
}

TEST_CASE("every shape runs clockwise and mirrors into itself seen from behind") {
  for (ShapeKind kind : {ShapeKind::rectangle, ShapeKind::ellipse, ShapeKind::arch,
                         ShapeKind::rounded, ShapeKind::stepped, ShapeKind::octagon}) {
    const Outline outline = edge(shape(kind, inches(1)), portrait, sixty_fourths(7));
    CHECK(signed_area(outline) > 0);
    const Outline behind = mirrored(outline, portrait.left + portrait.right);
    CHECK(signed_area(behind) == Approx(-signed_area(outline)));
    CHECK(bounding_box(behind) == bounding_box(outline));
    CHECK(distances(sampled(behind, 20), sampled(outline, 200)).most < bound);
  }
}

TEST_CASE("shapes that do not fit their rectangle are refused in words") {
  const auto refused = [](const ShapeSpec& spec) {
    const auto out = shape_outline(spec, portrait, Length());
    return out ? std::string() : out.error();
  };
  CHECK(refused(shape(ShapeKind::rounded, inches(5))) ==
        "the corners are larger than half the opening");
  CHECK(refused(shape(ShapeKind::octagon)) == "a corner needs a size");
  CHECK(refused(shape(ShapeKind::arch, {}, inches(5))) ==
        "the arch rises by more than half its width");
  CHECK_FALSE(refused(shape(ShapeKind::outline)).empty());
}
