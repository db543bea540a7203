#include "render/paper/canvas.h"

#include <cairo.h>

#include <numbers>

namespace mullion::paper {
namespace {

void set_colour(cairo_t* context, const Colour& colour, double opacity) {
  cairo_set_source_rgba(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                        opacity);
}

void trace_spots(cairo_t* context, const std::vector<Spot>& spots) {
  cairo_new_path(context);
  for (const Spot& spot : spots) cairo_line_to(context, spot.x, spot.y);
}

// Cairo knows no layers. A tag of the document's structure is written around the same marks; it is
// made a layer when the PDF is finished (pdf_finish.h).
constexpr const char* layer_tag = "Div";

}  // namespace

void Canvas::stroke(const Pen& pen) {
  set_colour(context_, pen.colour, pen.opacity);
  cairo_set_line_width(context_, pen.width);
  cairo_set_dash(context_, pen.dashes.data(), static_cast<int>(pen.dashes.size()), 0);
  cairo_stroke(context_);
}

void Canvas::paint(const Fill& fill) {
  set_colour(context_, fill.colour, fill.opacity);
  cairo_fill(context_);
}

void Canvas::line(Spot from, Spot to, const Pen& pen) {
  polyline({from, to}, pen);
}

void Canvas::polyline(const std::vector<Spot>& spots, const Pen& pen) {
  trace_spots(context_, spots);
  stroke(pen);
}

void Canvas::rectangle(const Box& box, const Pen& pen) {
  cairo_new_path(context_);
  cairo_rectangle(context_, box.x, box.y, box.width, box.height);
  stroke(pen);
}

void Canvas::fill(const Box& box, const Fill& fill) {
  cairo_new_path(context_);
  cairo_rectangle(context_, box.x, box.y, box.width, box.height);
  paint(fill);
}

void Canvas::fill(const std::vector<Spot>& polygon, const Fill& fill) {
  trace_spots(context_, polygon);
  cairo_close_path(context_);
  paint(fill);
}

void Canvas::circle(Spot centre, double radius, const Pen& pen) {
  cairo_new_path(context_);
  cairo_arc(context_, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
  stroke(pen);
}

void Canvas::trace(const Outline& outline, Spot origin, double scale) {
  const auto place = [&](const Point& p) {
    return Spot{origin.x + points(p.x) * scale, origin.y + points(p.y) * scale};
  };
  const Spot start = place(outline.start);
  cairo_move_to(context_, start.x, start.y);
  for (const Segment& segment : outline.segments) {
    const Spot to = place(segment.to);
    if (segment.curved) {
      const Spot a = place(segment.control1), b = place(segment.control2);
      cairo_curve_to(context_, a.x, a.y, b.x, b.y, to.x, to.y);
    } else {
      cairo_line_to(context_, to.x, to.y);
    }
  }
  cairo_close_path(context_);
}

void Canvas::outline(const Outline& outline, Spot origin, double scale, const Pen& pen) {
  cairo_new_path(context_);
  trace(outline, origin, scale);
  stroke(pen);
}

void Canvas::fill(const Outline& outline, Spot origin, double scale, const Fill& fill) {
  cairo_new_path(context_);
  trace(outline, origin, scale);
  paint(fill);
}

void Canvas::fill_between(const Outline& outer, const Outline& inner, Spot origin, double scale,
                          const Fill& fill) {
  cairo_new_path(context_);
  trace(outer, origin, scale);
  trace(inner, origin, scale);
  cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
  paint(fill);
  cairo_set_fill_rule(context_, CAIRO_FILL_RULE_WINDING);
}

void Canvas::hatch(const Outline& outline, Spot origin, double scale, double spacing,
                   const Pen& pen) {
  clip(outline, origin, scale);
  double left = 0, top = 0, right = 0, bottom = 0;
  cairo_clip_extents(context_, &left, &top, &right, &bottom);
  const double height = bottom - top;
  cairo_new_path(context_);
  for (double x = left - height + spacing; x < right; x += spacing) {
    cairo_move_to(context_, x, bottom);
    cairo_line_to(context_, x + height, top);
  }
  stroke(pen);
  end_clip();
}

void Canvas::clip(const Outline& outline, Spot origin, double scale) {
  cairo_save(context_);
  cairo_new_path(context_);
  trace(outline, origin, scale);
  cairo_clip(context_);
}

void Canvas::clip(const Box& box) {
  cairo_save(context_);
  cairo_new_path(context_);
  cairo_rectangle(context_, box.x, box.y, box.width, box.height);
  cairo_clip(context_);
}

void Canvas::end_clip() {
  cairo_restore(context_);
}

void Canvas::begin_layer(const std::string& name) {
  if (layers_ == nullptr) return;
  layers_->push_back(name);
  cairo_tag_begin(context_, layer_tag, nullptr);
}

void Canvas::end_layer() {
  if (layers_ != nullptr) cairo_tag_end(context_, layer_tag);
}

}  // namespace mullion::paper
