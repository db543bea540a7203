#include "render/proof/frame.h"

#include <array>

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

using paper::Spot;

// A rounded profile with a bead at the sight edge: light at parts of the way in from the outside.
struct Stop {
  double at, light;
};
constexpr std::array<Stop, 8> profile = {{{0.0, -0.35},
                                          {0.06, -0.08},
                                          {0.30, 0.16},
                                          {0.62, 0.02},
                                          {0.84, -0.22},
                                          {0.86, -0.40},
                                          {0.90, 0.10},
                                          {1.0, -0.30}}};

struct Side {
  Spot outer_a, outer_b, inner_b, inner_a;
  Spot normal;   // one point each way, from the outside in
  double light;  // that the whole side gets
};

void draw_side(paper::Drawing& page, const Side& side, double width, const Colour& colour) {
  const Spot from = side.outer_a;
  paper::Shade shade{from, {from.x + side.normal.x * width, from.y + side.normal.y * width}, {}};
  for (const Stop& stop : profile) {
    shade.stops.push_back({stop.at, lit(colour, stop.light * 0.8 + side.light), 1});
  }
  page.shade(paper::polygon({side.outer_a, side.outer_b, side.inner_b, side.inner_a}),
             std::move(shade));
}

}  // namespace

void draw_frame(paper::Drawing& page, const Rect& sight, const Rect& outer, const Colour& colour,
                const View& view) {
  const auto corners = [&](const Rect& r) {
    return std::array<Spot, 4>{view.spot(r.left, r.top), view.spot(r.right, r.top),
                               view.spot(r.right, r.bottom), view.spot(r.left, r.bottom)};
  };
  const auto out = corners(outer), in = corners(sight);
  const double width = in[0].x - out[0].x;
  page.fill(paper::rectangle(view.box({outer.left, outer.top, outer.right, sight.top})), {colour});
  page.fill(paper::rectangle(view.box({outer.left, sight.bottom, outer.right, outer.bottom})),
            {colour});
  page.fill(paper::rectangle(view.box({outer.left, sight.top, sight.left, sight.bottom})),
            {colour});
  page.fill(paper::rectangle(view.box({sight.right, sight.top, outer.right, sight.bottom})),
            {colour});
  draw_side(page, {out[0], out[1], in[1], in[0], {0, 1}, 0.07}, width, colour);
  draw_side(page, {out[3], out[0], in[0], in[3], {1, 0}, 0.02}, width, colour);
  draw_side(page, {out[1], out[2], in[2], in[1], {-1, 0}, -0.06}, width, colour);
  draw_side(page, {out[2], out[3], in[3], in[2], {0, -1}, -0.12}, width, colour);
  for (std::size_t i = 0; i < 4; ++i)
    page.stroke(paper::line(out[i], in[i]), {0.35, black, {}, 0.45});
}

}  // namespace mullion::proof
