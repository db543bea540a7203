#include "engine/mat/outline.h"

#include <catch2/catch.hpp>

#include "engine/mat/shape.h"
#include "tests/engine/mat/measure.h"

using namespace mullion;
using namespace test;

namespace {

const Rect box{inches(1), inches(2), inches(5), inches(4)};

Outline oval() {
  ShapeSpec spec;
  spec.kind = ShapeKind::ellipse;
  return shape_outline(spec, box, Length()).value();
}

}  // namespace

TEST_CASE("the area of a curved outline is that of its finely sampled polygon") {
  CHECK(signed_area(oval()) == Approx(polygon_area(sampled(oval(), 2'000))).epsilon(1e-8));
  CHECK(area(rectangle(box)) == 8.0 * 40640 * 40640);
}

TEST_CASE("a flattened outline lies on the outline and strays no farther than allowed") {
  for (std::int64_t tolerance : {1, 10, 100, 1'000}) {
    const std::vector<Vector> corners = flatten(oval(), Length::from_ticks(tolerance));
    const Polyline fine = sampled(oval(), 100);
    CHECK(distances(corners, fine).most < 0.5);
    CHECK(distances(fine, corners).most <= static_cast<double>(tolerance));
  }
}

TEST_CASE("an outline seen from behind is seen from the front again when mirrored twice") {
  const Length width = inches(9);
  const Outline moved = translated(oval(), inches(1), Length());
  CHECK(mirrored(mirrored(moved, width), width) == moved);
  CHECK(bounding_box(mirrored(moved, width)) == Rect{inches(3), inches(2), inches(7), inches(4)});
  CHECK(signed_area(reversed(moved)) == Approx(-signed_area(moved)));
  CHECK(reversed(reversed(moved)) == moved);
}

TEST_CASE("a point is inside, outside, and in no corner of the box that the curve leaves out") {
  CHECK(contains(oval(), {inches(3), inches(3)}));
  CHECK_FALSE(contains(oval(), {inches(1) + sixty_fourths(8), inches(2) + sixty_fourths(8)}));
  CHECK_FALSE(contains(oval(), {inches(6), inches(3)}));
}

TEST_CASE("two circles side by side are as far apart as their radii leave") {
  ShapeSpec spec;
  spec.kind = ShapeKind::ellipse;
  const Outline a = shape_outline(spec, {{}, {}, inches(2), inches(2)}, Length()).value();
  const Outline b = translated(a, inches(3), inches(4));  // centres 5 in apart
  const Length fine = Length::from_ticks(8);
  CHECK(distance(a, b, fine) == Approx(3.0 * 40640).margin(24));
  CHECK(distance(a, translated(a, inches(1), Length()), fine) == 0);
}
