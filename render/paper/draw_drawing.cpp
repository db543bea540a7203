#include <cairo.h>

#include "render/paper/drawing.h"
#include "render/paper/setting.h"

namespace mullion::paper {
namespace {

void set_colour(cairo_t* cairo, const Colour& colour, double opacity) {
  cairo_set_source_rgba(cairo, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                        opacity);
}

void add_path(cairo_t* cairo, const Path& path) {
  for (const Path::Step& step : path.steps()) {
    switch (step.kind) {
      case Path::Kind::move:
        cairo_move_to(cairo, step.to.x, step.to.y);
        break;
      case Path::Kind::line:
        cairo_line_to(cairo, step.to.x, step.to.y);
        break;
      case Path::Kind::curve:
        cairo_curve_to(cairo, step.control1.x, step.control1.y, step.control2.x, step.control2.y,
                       step.to.x, step.to.y);
        break;
      case Path::Kind::close:
        cairo_close_path(cairo);
        break;
    }
  }
}

// The subpaths that come near the visible box.
Path visible_part(const Path& path, const Box& visible) {
  Path result, subpath;
  const auto keep = [&] {
    if (!subpath.empty() && overlap(bounds_of(subpath), visible)) result.append(subpath);
    subpath = {};
  };
  for (const Path::Step& step : path.steps()) {
    switch (step.kind) {
      case Path::Kind::move:
        keep();
        subpath.move_to(step.to);
        break;
      case Path::Kind::line:
        subpath.line_to(step.to);
        break;
      case Path::Kind::curve:
        subpath.curve_to(step.control1, step.control2, step.to);
        break;
      case Path::Kind::close:
        subpath.close();
        break;
    }
  }
  keep();
  return result;
}

void replay(Canvas& canvas, const Drawing& drawing, const Box& visible);

struct Replay {
  Canvas& canvas;
  cairo_t* cairo;
  const Box& visible;

  void operator()(const Stroke& stroke) const {
    add_path(cairo, visible_part(stroke.path, grown(visible, stroke.pen.width)));
    set_colour(cairo, stroke.pen.colour, stroke.pen.opacity);
    cairo_set_line_width(cairo, stroke.pen.width);
    cairo_set_dash(cairo, stroke.pen.dashes.data(), static_cast<int>(stroke.pen.dashes.size()), 0);
    cairo_stroke(cairo);
  }

  void operator()(const Area& area) const {
    add_path(cairo, area.path);
    set_colour(cairo, area.fill.colour, area.fill.opacity);
    cairo_fill(cairo);
  }

  void operator()(const Label& label) const {
    const Text::Setting& setting = label.text.setting();
    cairo_save(cairo);
    transform(label.placed);
    cairo_scale(cairo, setting.scale, setting.scale);
    set_colour(cairo, label.text.style().colour, 1);
    cairo_move_to(cairo, 0, 0);
    pango_cairo_show_layout(cairo, setting.layout.get());
    cairo_restore(cairo);
  }

  void operator()(const Group& group) const {
    if (!group.title.empty()) canvas.begin_layer(group.title);
    cairo_save(cairo);
    Box inside = visible;
    if (group.clip) {
      const Box& clip = inside = *group.clip;
      cairo_rectangle(cairo, clip.x, clip.y, clip.width, clip.height);
      cairo_clip(cairo);
    }
    transform(group.placed);
    replay(canvas, *group.drawing, bounds_of(inverse(group.placed), inside));
    cairo_restore(cairo);
    if (!group.title.empty()) canvas.end_layer();
  }

  void transform(const Transform& map) const {
    cairo_matrix_t matrix;
    cairo_matrix_init(&matrix, map.xx, map.yx, map.xy, map.yy, map.x0, map.y0);
    cairo_transform(cairo, &matrix);
  }
};

void replay(Canvas& canvas, const Drawing& drawing, const Box& visible) {
  for (const Item& item : drawing.items()) {
    if (overlap(bounds_of(item), visible))
      std::visit(Replay{canvas, canvas.context(), visible}, item);
  }
}

}  // namespace

void draw(const Drawing& drawing, Canvas& canvas, const Box& visible) {
  cairo_t* cairo = canvas.context();
  cairo_save(cairo);
  cairo_set_fill_rule(cairo, CAIRO_FILL_RULE_EVEN_ODD);
  replay(canvas, drawing, visible);
  cairo_restore(cairo);
}

void draw(const Drawing& drawing, Canvas& canvas) {
  draw(drawing, canvas, bounds_of(drawing));
}

}  // namespace mullion::paper
