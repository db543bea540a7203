#include "render/proof/frame.h"

#include <cairo.h>

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

void draw_side(paper::Canvas& canvas, const Side& side, double width, const Colour& colour) {
  cairo_t* context = canvas.context();
  const Spot from = side.outer_a;
  cairo_pattern_t* shade = cairo_pattern_create_linear(
      from.x, from.y, from.x + side.normal.x * width, from.y + side.normal.y * width);
  for (const Stop& stop : profile) {
    const Colour tone = lit(colour, stop.light * 0.8 + side.light);
    cairo_pattern_add_color_stop_rgb(shade, stop.at, tone.red / 255.0, tone.green / 255.0,
                                     tone.blue / 255.0);
  }
  cairo_new_path(context);
  for (const Spot& spot : {side.outer_a, side.outer_b, side.inner_b, side.inner_a}) {
    cairo_line_to(context, spot.x, spot.y);
  }
  cairo_close_path(context);
  cairo_set_source(context, shade);
  cairo_fill(context);
  cairo_pattern_destroy(shade);
}

}  // namespace

void draw_frame(paper::Canvas& canvas, const Rect& sight, const Rect& outer, const Colour& colour,
                const View& view) {
  const auto corners = [&](const Rect& r) {
    return std::array<Spot, 4>{view.spot(r.left, r.top), view.spot(r.right, r.top),
                               view.spot(r.right, r.bottom), view.spot(r.left, r.bottom)};
  };
  const auto out = corners(outer), in = corners(sight);
  const double width = in[0].x - out[0].x;
  canvas.fill(view.box({outer.left, outer.top, outer.right, sight.top}), {colour});
  canvas.fill(view.box({outer.left, sight.bottom, outer.right, outer.bottom}), {colour});
  canvas.fill(view.box({outer.left, sight.top, sight.left, sight.bottom}), {colour});
  canvas.fill(view.box({sight.right, sight.top, outer.right, sight.bottom}), {colour});
  draw_side(canvas, {out[0], out[1], in[1], in[0], {0, 1}, 0.07}, width, colour);
  draw_side(canvas, {out[3], out[0], in[0], in[3], {1, 0}, 0.02}, width, colour);
  draw_side(canvas, {out[1], out[2], in[2], in[1], {-1, 0}, -0.06}, width, colour);
  draw_side(canvas, {out[2], out[3], in[3], in[2], {0, -1}, -0.12}, width, colour);
  for (std::size_t i = 0; i < 4; ++i) canvas.line(out[i], in[i], {0.35, black, {}, 0.45});
}

}  // namespace mullion::proof
