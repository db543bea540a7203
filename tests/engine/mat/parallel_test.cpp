#include "engine/mat/parallel.h"

#include <catch2/catch.hpp>

#include "engine/mat/shape.h"
#include "engine/mat/svg_path.h"
#include "tests/engine/mat/measure.h"

using namespace mullion;
using namespace test;

namespace {

const double bound = static_cast<double>(outline_tolerance.ticks());
const Rect box{inches(2), inches(2), inches(8), inches(8)};

Outline drawn(const char* data, const Rect& rect = box) {
  const auto path = parse_path(data);
  if (!path) throw std::runtime_error(path.error().message);
  return fill(*path, rect).value();
}

Outline grown(const Outline& outline, Length outward) {
  const auto out = parallel(outline, outward);
  if (!out) throw std::runtime_error(out.error());
  return *out;
}

double ticks(Length length) {
  return static_cast<double>(length.ticks());
}

const char* const heart =
    "M50 90 C0 50 0 10 28 10 C40 10 48 18 50 28 C52 18 60 10 72 10 C100 10 100 50 50 90 Z";
const char* const bean = "M10 50 C10 10 50 0 70 20 S 100 20 110 50 S 80 90 60 70 S 10 90 10 50 Z";
const char* const star = "M50 0 L61 35 L98 35 L68 57 L79 91 L50 70 L21 91 L32 57 L2 35 L39 35 Z";

}  // namespace

TEST_CASE("the parallel of a smooth free outline is everywhere at its distance") {
  const Outline outline = drawn(bean);
  const Polyline fine = sampled(outline, 1'500);
  for (Length d : {sixty_fourths(4), sixty_fourths(20), inches(1)}) {
    const Outline out = grown(outline, d);
    const Spread spread = distances(sampled(out, 15), fine);
    CAPTURE(ticks(d), out.segments.size());
    CHECK(spread.least > ticks(d) - bound);
    CHECK(spread.most < ticks(d) + bound);
    CHECK(signed_area(out) > signed_area(outline));
    CHECK(out.segments.size() < 150);
  }
}

TEST_CASE("a hollow that is too narrow for the run is cut off where the curves cross") {
  const Outline outline = drawn(heart);
  const Polyline fine = sampled(outline, 1'500);
  const Length d = sixty_fourths(20);
  const Outline out = grown(outline, d);
  // Nothing comes nearer than the distance; only the point of the heart, mitred, is farther.
  for (Vector p : sampled(out, 15)) {
    const double away = distance_to(fine, p);
    CHECK(away > ticks(d) - bound);
    if (p.y < ticks(inches(7))) CHECK(away < ticks(d) + bound);
  }
}

TEST_CASE("the points of a star are mitred and its hollows are sharp") {
  const Outline outline = drawn(star);
  const Outline out = grown(outline, sixty_fourths(4));
  CHECK(out.segments.size() == 10);
  const Polyline corners = sampled(out, 1);
  const Polyline original = sampled(outline, 1);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vector a = corners[i], b = corners[(i + 1) % corners.size()];
    for (double part : {0.3, 0.5, 0.7}) {
      const Vector p{a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part};
      CHECK(std::abs(distance_to(original, p) - ticks(sixty_fourths(4))) < 1.5);
    }
  }
}

TEST_CASE("a free circle grows to the circle of the larger radius") {
  const Outline circle = drawn("M0 5 A5 5 0 0 1 10 5 A5 5 0 0 1 0 5 Z");
  const Outline out = grown(circle, sixty_fourths(16));
  const double radius = ticks(inches(3) + sixty_fourths(16));
  for (Vector p : sampled(out, 20)) {
    CHECK(std::abs(std::hypot(p.x - ticks(inches(5)), p.y - ticks(inches(5))) - radius) < bound);
  }
}

TEST_CASE("straight edges of a free outline stay lines") {
  const Outline out = grown(drawn("M0 0 H20 V10 a10 10 0 0 1 -20 0 Z"), sixty_fourths(4));
  int lines = 0;
  for (const Segment& segment : out.segments) lines += segment.curved ? 0 : 1;
  CHECK(lines == 3);
  CHECK(bounding_box(out).top == inches(2) - sixty_fourths(4));
}

TEST_CASE("an outline that crosses itself or closes to a ring is refused") {
  const std::string crossing = "the outline crosses itself or goes along one line twice";
  CHECK(flaw_of(drawn("M0 0 L10 10 L10 0 L0 10 Z")) == crossing);
  CHECK(flaw_of(drawn("M0 0 H10 V10 H0 V0 H10 V10 H0 Z")) == crossing);           // twice round
  CHECK(flaw_of(drawn("M0 0 H10 V5 H15 H10 V10 H0 Z")) == crossing);              // a spike
  CHECK(flaw_of(drawn("M0 0 H4 V4 H8 V0 H12 V9 H8 V4 H4 V9 H0 Z")) == crossing);  // two halves
  CHECK(flaw_of(drawn("M0 0 H5 H10 V5 V10 H5 H0 V5 Z")).empty());
  CHECK(flaw_of(drawn(heart)).empty());
  const auto ring =
      parallel(drawn("M0 0 H10 V4.99 H6 V4 H4 V6 H6 V5.01 H10 V10 H0 Z"), sixty_fourths(4));
  REQUIRE_FALSE(ring);
  CHECK(ring.error().find("island") != std::string::npos);
}
