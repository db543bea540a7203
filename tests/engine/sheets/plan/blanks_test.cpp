#include "engine/sheets/plan/blanks.h"

#include <catch2/catch.hpp>

#include "engine/mat/shape.h"

using namespace mullion;

namespace {

Window window(ShapeKind kind, Length width, Length height) {
  Window result;
  result.openings = {3};
  result.shape.kind = kind;
  result.shape.corner = inches(1);
  result.back = {inches(2), inches(2), inches(2) + width, inches(2) + height};
  result.back_edge = shape_outline(result.shape, result.back, {}).value();
  return result;
}

std::vector<BlankOrder> blanks_with(const Window& window) {
  Mat mat;
  mat.outer = {Length(), Length(), inches(16), inches(20)};
  MatLayer layer;
  layer.number = 1;
  layer.board.name = "Top mat";
  layer.board.board = "Oat";
  layer.board.grain = true;
  layer.windows = {window};
  mat.layers = {layer};
  return blanks_of(cuts_of(mat), 4, "A-1");
}

}  // namespace

TEST_CASE("each layer of a mat calls for a blank of its board in the job's quantity") {
  const auto blanks = blanks_with(window(ShapeKind::rectangle, inches(9), inches(12)));
  REQUIRE(blanks.size() == 1);
  CHECK(blanks[0].order == "A-1");
  CHECK(blanks[0].layer == "Top mat");
  CHECK(blanks[0].board.name == "Oat");
  CHECK(blanks[0].width == inches(16));
  CHECK(blanks[0].height == inches(20));
  CHECK(blanks[0].quantity == 4);
  CHECK(blanks[0].grain);
}

TEST_CASE("a fallout is the opening's back edge less a margin on each side") {
  const auto blanks = blanks_with(window(ShapeKind::rectangle, inches(9), inches(12)));
  REQUIRE(blanks[0].fallouts.size() == 1);
  CHECK(blanks[0].fallouts[0].width == inches(9) - fallout_margin * 2);
  CHECK(blanks[0].fallouts[0].height == inches(12) - fallout_margin * 2);
  CHECK(blanks[0].fallouts[0].opening == 3);
}

TEST_CASE("the fallout of stepped corners gives up both ends of its longer side") {
  const auto blanks = blanks_with(window(ShapeKind::stepped, inches(9), inches(12)));
  CHECK(blanks[0].fallouts.at(0).width == inches(9) - fallout_margin * 2);
  CHECK(blanks[0].fallouts.at(0).height == inches(10) - fallout_margin * 2);
}

TEST_CASE("the rectangle used of an oval fallout lies within the oval") {
  const auto blanks = blanks_with(window(ShapeKind::ellipse, inches(9), inches(12)));
  const Fallout& fallout = blanks[0].fallouts.at(0);
  // x^2 / a^2 + y^2 / b^2 of a corner, margin included.
  const double x = to_inches(fallout.width + fallout_margin * 2) / 9;
  const double y = to_inches(fallout.height + fallout_margin * 2) / 12;
  CHECK(x * x + y * y <= 1.0 + 1e-6);
  CHECK(x * x + y * y > 0.999);
}

TEST_CASE("arches and free outlines leave fallouts too") {
  CHECK(blanks_with(window(ShapeKind::arch, inches(9), inches(12)))[0].fallouts.size() == 1);
  Window star = window(ShapeKind::rectangle, inches(9), inches(12));
  star.shape.kind = ShapeKind::outline;
  star.back_edge = polygon({{inches(6), inches(2)},
                            {inches(11), inches(8)},
                            {inches(6), inches(14)},
                            {inches(2), inches(8)}});
  const auto blanks = blanks_with(star);
  REQUIRE(blanks[0].fallouts.size() == 1);
  // Half of the area of a diamond, less the margin.
  CHECK(to_inches(blanks[0].fallouts[0].width + fallout_margin * 2) *
            to_inches(blanks[0].fallouts[0].height + fallout_margin * 2) ==
        Approx(9.0 * 12 / 4).epsilon(1e-3));
}

TEST_CASE("a window that is all margin leaves no fallout") {
  CHECK(
      blanks_with(window(ShapeKind::rectangle, sixty_fourths(8), inches(12)))[0].fallouts.empty());
}
