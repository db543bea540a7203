#include "render/proof/windows.h"

#include <cairo.h>

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

// Light from the upper left: the bevels below and to the right of a window face it.
constexpr double shade_top = -0.15, shade_left = -0.09, shade_right = -0.02, shade_bottom = 0;

void draw_side(paper::Canvas& canvas, paper::Spot a, paper::Spot b, paper::Spot c, paper::Spot d,
               const Colour& colour) {
  canvas.fill(std::vector<paper::Spot>{a, b, c, d}, {colour});
}

void draw_straight_bevel(paper::Canvas& canvas, const Window& window, const Colour& core,
                         const View& view) {
  const auto corners = [&](const Rect& r) {
    return std::vector<paper::Spot>{view.spot(r.left, r.top), view.spot(r.right, r.top),
                                    view.spot(r.right, r.bottom), view.spot(r.left, r.bottom)};
  };
  const auto face = corners(window.face), back = corners(window.back);
  draw_side(canvas, face[0], face[1], back[1], back[0], lit(core, shade_top));
  draw_side(canvas, face[3], face[0], back[0], back[3], lit(core, shade_left));
  draw_side(canvas, face[1], face[2], back[2], back[1], lit(core, shade_right));
  draw_side(canvas, face[2], face[3], back[3], back[2], lit(core, shade_bottom));
}

// Curves are shaded by one sweep of light across the window.
void draw_curved_bevel(paper::Canvas& canvas, const Window& window, const Colour& core,
                       const View& view) {
  canvas.fill_between(window.face_edge, window.back_edge, view.origin, view.scale, {core});
  const paper::Box box = view.box(window.face);
  cairo_t* context = canvas.context();
  canvas.clip(window.face_edge, view.origin, view.scale);
  cairo_pattern_t* sweep =
      cairo_pattern_create_linear(box.x, box.y, box.x + box.width, box.y + box.height);
  cairo_pattern_add_color_stop_rgba(sweep, 0.1, 0, 0, 0, -shade_top);
  cairo_pattern_add_color_stop_rgba(sweep, 0.9, 0, 0, 0, 0);
  cairo_set_source(context, sweep);
  cairo_rectangle(context, box.x, box.y, box.width, box.height);
  cairo_fill(context);
  cairo_pattern_destroy(sweep);
  canvas.end_clip();
}

}  // namespace

void draw_board(paper::Canvas& canvas, const MatLayer& layer, const Rect& outer, const View& view) {
  cairo_t* context = canvas.context();
  const Colour& colour = layer.board.colour;
  cairo_new_path(context);
  const paper::Box box = view.box(outer);
  cairo_rectangle(context, box.x, box.y, box.width, box.height);
  for (const Window& window : layer.windows)
    canvas.trace(window.face_edge, view.origin, view.scale);
  cairo_set_fill_rule(context, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_set_source_rgb(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
  cairo_fill(context);
  cairo_set_fill_rule(context, CAIRO_FILL_RULE_WINDING);
}

void draw_bevel(paper::Canvas& canvas, const Window& window, const Colour& core, const View& view) {
  if (window.shape.kind == ShapeKind::rectangle) {
    draw_straight_bevel(canvas, window, core, view);
  } else {
    draw_curved_bevel(canvas, window, core, view);
  }
}

}  // namespace mullion::proof
