#include "engine/sheets/plan/inner_rectangle.h"

#include <cairo.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <memory>
#include <numbers>
#include <random>

#include "engine/mat/shape.h"

using namespace mullion;

namespace {

double ticks(Length length) {
  return static_cast<double>(length.ticks());
}

Outline shape(ShapeKind kind, Length corner, Length width, Length height) {
  ShapeSpec spec;
  spec.kind = kind;
  spec.corner = corner;
  return shape_outline(spec, {inches(2), inches(3), inches(2) + width, inches(3) + height}, {})
      .value();
}

Rect inner(const Outline& outline) {
  const auto rect = inner_rectangle(outline);
  REQUIRE(rect);
  return *rect;
}

double square_inches(const Rect& rect) {
  return to_inches(rect.width()) * to_inches(rect.height());
}

// The outline as cairo fills it: knows nothing of our own geometry.
class Filled {
 public:
  explicit Filled(const Outline& outline)
      : surface_(cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr),
                 cairo_surface_destroy),
        cairo_(cairo_create(surface_.get()), cairo_destroy) {
    cairo_set_tolerance(cairo_.get(), 0.01);
    cairo_move_to(cairo_.get(), x(outline.start), y(outline.start));
    for (const Segment& part : outline.segments) {
      if (part.curved) {
        cairo_curve_to(cairo_.get(), x(part.control1), y(part.control1), x(part.control2),
                       y(part.control2), x(part.to), y(part.to));
      } else {
        cairo_line_to(cairo_.get(), x(part.to), y(part.to));
      }
    }
    cairo_close_path(cairo_.get());
  }

  bool holds(double px, double py) const { return cairo_in_fill(cairo_.get(), px, py) != 0; }

  // Every point tried on the rectangle's edge, a hundredth of a millimetre inside it.
  bool holds(const Rect& rect) const {
    constexpr int points = 400;
    const double in = ticks(Length::from_ticks(16)) / unit;
    const double left = ticks(rect.left) / unit + in, right = ticks(rect.right) / unit - in;
    const double top = ticks(rect.top) / unit + in, bottom = ticks(rect.bottom) / unit - in;
    for (int i = 0; i <= points; ++i) {
      const double across = left + (right - left) * i / points;
      const double down = top + (bottom - top) * i / points;
      if (!holds(across, top) || !holds(across, bottom) || !holds(left, down) ||
          !holds(right, down)) {
        return false;
      }
    }
    return true;
  }

  // Cairo counts in 1/256 of a unit, up to 2^23 units.
  static constexpr double unit = 100;

 private:
  static double x(const Point& point) { return ticks(point.x) / unit; }
  static double y(const Point& point) { return ticks(point.y) / unit; }
  std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)> surface_;
  std::unique_ptr<cairo_t, void (*)(cairo_t*)> cairo_;
};

// The largest rectangle of whole cells of a raster, by trying every one; in square inches.
double largest_on_raster(const Outline& outline, int cells) {
  const Filled filled(outline);
  const Rect box = bounding_box(outline);
  const double left = ticks(box.left) / Filled::unit, top = ticks(box.top) / Filled::unit;
  const double width = ticks(box.width()) / Filled::unit / cells;
  const double height = ticks(box.height()) / Filled::unit / cells;
  constexpr int samples = 4;
  std::vector<std::vector<int>> full(static_cast<std::size_t>(cells));
  for (int i = 0; i < cells; ++i) {
    for (int j = 0; j < cells; ++j) {
      bool whole = true;
      for (int k = 0; k < samples * samples && whole; ++k) {
        const int across = k / samples, down = k % samples;
        whole = filled.holds(left + width * (i + (across + 0.02) / (samples - 0.96)),
                             top + height * (j + (down + 0.02) / (samples - 0.96)));
      }
      full[static_cast<std::size_t>(i)].push_back(whole ? 1 : 0);
    }
  }
  int best = 0;
  for (int first = 0; first < cells; ++first) {
    std::vector<int> open(static_cast<std::size_t>(cells), 1);
    for (int last = first; last < cells; ++last) {
      int run = 0;
      for (std::size_t j = 0; j < open.size(); ++j) {
        open[j] &= full[static_cast<std::size_t>(last)][j];
        run = open[j] != 0 ? run + 1 : 0;
        best = std::max(best, run * (last - first + 1));
      }
    }
  }
  return best * to_inches(box.width()) / cells * to_inches(box.height()) / cells;
}

// A closed curve about a middle whose distance from it varies, made of random cubic pieces.
Outline blob(std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto draw = [&random](double from, double to) {
    return from + (to - from) * static_cast<double>(random() % 10'000) / 10'000;
  };
  constexpr int parts = 9;
  const auto at = [](double angle, double radius) {
    return nearest_point({400'000 + radius * std::cos(angle), 300'000 + radius * std::sin(angle)});
  };
  std::vector<double> radii;
  for (int i = 0; i < parts; ++i) radii.push_back(draw(60'000, 250'000));
  constexpr double turn = 2 * std::numbers::pi / parts;
  Outline outline;
  outline.start = at(0, radii[0]);
  for (int i = 0; i < parts; ++i) {
    const double from = turn * i, radius = radii[static_cast<std::size_t>(i)];
    const double next = radii[static_cast<std::size_t>((i + 1) % parts)];
    Segment segment;
    segment.curved = i % 3 != 0;
    segment.control1 = at(from + turn / 3, radius * draw(0.9, 1.1));
    segment.control2 = at(from + 2 * turn / 3, next * draw(0.9, 1.1));
    segment.to = i + 1 == parts ? outline.start : at(from + turn, next);
    outline.segments.push_back(segment);
  }
  return outline;
}

}  // namespace

TEST_CASE("a rectangle is its own largest rectangle") {
  const Rect rect{inches(1), inches(2), inches(10), inches(14)};
  CHECK(inner(rectangle(rect)) == rect);
}

TEST_CASE("the largest rectangle in an ellipse has sides of 1/sqrt(2) of its axes") {
  // Elementary geometry: of all x^2/a^2 + y^2/b^2 = 1 the product x y is greatest at a/sqrt(2),
  // b/sqrt(2).
  const Rect rect = inner(shape(ShapeKind::ellipse, {}, inches(9), inches(12)));
  CHECK(to_inches(rect.width()) == Approx(9 / std::numbers::sqrt2).epsilon(1e-3));
  CHECK(square_inches(rect) == Approx(9.0 * 12 / 2).epsilon(1e-4));
  CHECK(square_inches(rect) < 9.0 * 12 / 2 + 1e-4);
}

TEST_CASE("the largest rectangle in a half-round arch weighs height against width") {
  // A half circle of radius 3 on sides 6 in high: with half-width 3 cos t the height is
  // 6 + 3 sin t; the greatest product, found by trying a hundred thousand angles.
  double best = 0;
  for (int i = 0; i <= 100'000; ++i) {
    const double t = std::numbers::pi / 2 * i / 100'000;
    best = std::max(best, 6 * std::cos(t) * (6 + 3 * std::sin(t)));
  }
  const Rect rect = inner(shape(ShapeKind::arch, inches(3), inches(6), inches(9)));
  CHECK(square_inches(rect) == Approx(best).epsilon(1e-4));
  CHECK(to_inches(rect.bottom) == Approx(12).margin(1e-4));
}

TEST_CASE("stepped corners and octagons give up the ends of their longer side") {
  for (const ShapeKind kind : {ShapeKind::stepped, ShapeKind::octagon}) {
    const Rect rect = inner(shape(kind, inches(1), inches(9), inches(12)));
    CHECK(rect.width() == inches(9));
    CHECK(rect.height() == inches(10));
  }
}

TEST_CASE("an L is good for its larger limb") {
  const Rect rect = inner(polygon({{inches(0), inches(0)},
                                   {inches(4), inches(0)},
                                   {inches(4), inches(7)},
                                   {inches(11), inches(7)},
                                   {inches(11), inches(12)},
                                   {inches(0), inches(12)}}));
  CHECK(rect == Rect{inches(0), inches(7), inches(11), inches(12)});
}

TEST_CASE("the rectangle goes round a notch that is cut in from the side") {
  const Rect rect = inner(polygon({{inches(0), inches(0)},
                                   {inches(10), inches(0)},
                                   {inches(10), inches(10)},
                                   {inches(6), inches(10)},
                                   {inches(6), inches(3)},
                                   {inches(5), inches(3)},
                                   {inches(5), inches(10)},
                                   {inches(0), inches(10)}}));
  CHECK(rect == Rect{inches(0), inches(0), inches(5), inches(10)});
}

TEST_CASE("the rectangle in a free outline lies inside, and none on a raster is larger") {
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    INFO("outline " << seed);
    const Outline outline = blob(seed);
    const Rect rect = inner(outline);
    CHECK(Filled(outline).holds(rect));
    CHECK(square_inches(rect) >= largest_on_raster(outline, 40));
  }
}

TEST_CASE("an outline without room for a rectangle has none") {
  CHECK(!inner_rectangle(polygon({{inches(0), inches(0)}, {inches(5), inches(0)}})));
}
