#include "render/proof/shadow.h"

#include <cairo.h>

#include <algorithm>
#include <numbers>

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

constexpr int steps = 11;
// How far the light, from the upper left, moves a shadow: of 1 it would leave none of it on the
// other side.
constexpr double inside_lean = 0.7, wall_lean = 0.35;

void trace_rounded(cairo_t* context, const paper::Box& box, double radius) {
  const double pi = std::numbers::pi;
  cairo_new_path(context);
  cairo_arc(context, box.x + radius, box.y + radius, radius, pi, 1.5 * pi);
  cairo_arc(context, box.x + box.width - radius, box.y + radius, radius, 1.5 * pi, 2 * pi);
  cairo_arc(context, box.x + box.width - radius, box.y + box.height - radius, radius, 0, pi / 2);
  cairo_arc(context, box.x + radius, box.y + box.height - radius, radius, pi / 2, pi);
  cairo_close_path(context);
}

}  // namespace

void shadow_inside(paper::Canvas& canvas, const Outline& edge, const View& view, double reach,
                   double strength) {
  canvas.clip(edge, view.origin, view.scale);
  for (int i = 1; i <= steps; ++i) {
    const double half_width = reach * i / steps / (1 + inside_lean);
    const double shift = half_width * inside_lean;
    canvas.outline(edge, {view.origin.x + shift, view.origin.y + shift}, view.scale,
                   {2 * half_width, black, {}, strength / steps});
  }
  canvas.end_clip();
}

void shadow_below(paper::Canvas& canvas, const paper::Box& box, double reach, double strength) {
  const double smallest = std::min(box.width, box.height) / 2;
  for (int i = steps; i >= 1; --i) {
    const double grow = reach * (2.0 * i / steps - 1) / 2;
    const paper::Box cast{box.x + reach * wall_lean - grow, box.y + reach * 2 * wall_lean - grow,
                          box.width + 2 * grow, box.height + 2 * grow};
    trace_rounded(canvas.context(), cast, std::clamp(reach / 2 + grow, 0.0, smallest));
    cairo_set_source_rgba(canvas.context(), 0, 0, 0, strength / steps);
    cairo_fill(canvas.context());
  }
}

}  // namespace mullion::proof
