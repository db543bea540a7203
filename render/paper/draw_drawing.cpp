#include <cairo.h>

#include <algorithm>

#include "render/paper/drawing.h"
#include "render/paper/setting.h"

namespace mullion::paper {
namespace {

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

bool contains(const Box& outer, const Box& inner) {
  return inner.x >= outer.x && inner.y >= outer.y &&
         inner.x + inner.width <= outer.x + outer.width &&
         inner.y + inner.height <= outer.y + outer.height;
}

// Whether a box of the outer drawing shows any of the group's items.
bool shows_any(const Group& group, const Box& box) {
  const Box inside = bounds_of(inverse(group.placed), box);
  const std::vector<Box>& bounds = group.drawing->bounds();
  return std::any_of(bounds.begin(), bounds.end(),
                     [&](const Box& item) { return overlap(item, inside); });
}

// What is seen: items outside it are left out, and what crosses its edge is cut off there if asked.
struct View {
  Box box;
  bool cut = false;
};

// Cairo is asked for little: strokes of one pen that follow one another are one path, and lines are
// cut off here, since a clip that comes and goes takes more of a PDF than the lines do.
class Replay {
 public:
  explicit Replay(Canvas& canvas) : canvas_(canvas), cairo_(canvas.context()) {}

  void draw(const Drawing& drawing, const View& view) {
    const std::vector<Box>& bounds = drawing.bounds();
    for (std::size_t i = 0; i < bounds.size(); ++i) {
      if (!overlap(bounds[i], view.box)) continue;
      const View seen{view.box, view.cut && !contains(view.box, bounds[i])};
      std::visit([&](const auto& item) { draw(item, seen); }, drawing.items()[i]);
    }
  }

  void finish() {
    if (pen_ == nullptr) return;
    set_colour(cairo_, pen_->colour, pen_->opacity);
    cairo_set_line_width(cairo_, pen_->width);
    cairo_set_dash(cairo_, pen_->dashes.data(), static_cast<int>(pen_->dashes.size()), 0);
    cairo_stroke(cairo_);
    pen_ = nullptr;
  }

 private:
  void draw(const Stroke& stroke, const View& view) {
    if (view.cut && has_curves(stroke.path)) return draw_clipped(stroke, view.box);
    // Lines that cross are darker where they are not quite opaque.
    if (pen_ != nullptr && (*pen_ != stroke.pen || stroke.pen.opacity < 1)) finish();
    pen_ = &stroke.pen;
    add_path(cairo_, view.cut ? lines_inside(stroke.path, view.box) : stroke.path);
  }

  void draw(const Area& area, const View& view) {
    if (view.cut && has_curves(area.path)) return draw_clipped(area, view.box);
    finish();
    add_path(cairo_, view.cut ? area_inside(area.path, view.box) : area.path);
    set_colour(cairo_, area.fill.colour, area.fill.opacity);
    cairo_fill(cairo_);
  }

  void draw(const Label& label, const View& view) {
    if (view.cut) return draw_clipped(label, view.box);
    const Text::Setting& setting = label.text.setting();
    const Saved saved(*this);
    transform(label.placed);
    cairo_scale(cairo_, setting.scale, setting.scale);
    set_colour(cairo_, label.text.style().colour, 1);
    cairo_move_to(cairo_, 0, 0);
    pango_cairo_show_layout(cairo_, setting.layout.get());
    cairo_new_path(cairo_);
  }

  void draw(const Group& group, const View& view) {
    View inside = view;
    if (group.clip) inside = {view.cut ? common(view.box, *group.clip) : *group.clip, true};
    const bool turns = group.placed.xy != 0 || group.placed.yx != 0;
    if (turns && inside.cut) {
      Group whole = group;
      whole.clip.reset();
      return draw_clipped(whole, inside.box);
    }
    if (group.repeated && canvas_.stamps() != nullptr && !inside.cut) return stamp(group);
    if (group.title.empty()) return draw_content(group, inside);
    if (!shows_any(group, inside.box)) return;
    finish();
    canvas_.begin_layer(group.title);
    draw_content(group, inside);
    finish();
    canvas_.end_layer();
  }

  void draw_content(const Group& group, const View& view) {
    if (!group.placed.moves()) return draw(*group.drawing, view);
    const Saved saved(*this);
    transform(group.placed);
    draw(*group.drawing, {bounds_of(inverse(group.placed), view.box), view.cut});
  }

  void stamp(const Group& group) {
    const Saved saved(*this);
    transform(group.placed);
    cairo_set_source_surface(cairo_, canvas_.stamps()->stamp_of(group.drawing), 0, 0);
    cairo_paint(cairo_);
  }

  // Cairo's state before; what is drawn while this lives is drawn within it.
  class Saved {
   public:
    explicit Saved(Replay& replay) : replay_(replay) {
      replay_.finish();
      cairo_save(replay_.cairo_);
    }
    ~Saved() {
      replay_.finish();
      cairo_restore(replay_.cairo_);
    }
    Saved(const Saved&) = delete;
    Saved& operator=(const Saved&) = delete;

   private:
    Replay& replay_;
  };

  template <class T>
  void draw_clipped(const T& item, const Box& box) {
    const Saved saved(*this);
    cairo_rectangle(cairo_, box.x, box.y, box.width, box.height);
    cairo_clip(cairo_);
    draw(item, View{box, false});
  }

  void transform(const Transform& map) {
    cairo_matrix_t matrix;
    cairo_matrix_init(&matrix, map.xx, map.yx, map.xy, map.yy, map.x0, map.y0);
    cairo_transform(cairo_, &matrix);
  }

  Canvas& canvas_;
  cairo_t* cairo_;
  const Pen* pen_ = nullptr;  // of the path that waits
};

}  // namespace

void draw(const Drawing& drawing, Canvas& canvas, const Box& visible) {
  cairo_t* cairo = canvas.context();
  cairo_save(cairo);
  cairo_set_fill_rule(cairo, CAIRO_FILL_RULE_EVEN_ODD);
  Replay replay(canvas);
  replay.draw(drawing, {visible, false});
  replay.finish();
  cairo_restore(cairo);
}

void draw(const Drawing& drawing, Canvas& canvas) {
  draw(drawing, canvas, bounds_of(drawing));
}

}  // namespace mullion::paper
