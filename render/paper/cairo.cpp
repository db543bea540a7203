#include "render/paper/cairo.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <stdexcept>

namespace mullion::paper {
namespace {

// Cairo knows no layers. A tag of the document's structure is written around the same marks; it is
// made a layer when the PDF is finished (pdf_layers.h).
constexpr const char* layer_tag = "Div";
constexpr int jpeg_quality = 88;  // of decoded pictures

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

void set_colour(cairo_t* cairo, const Colour& colour, double opacity) {
  cairo_set_source_rgba(cairo, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                        opacity);
}

void set_paint(cairo_t* cairo, const Fill& fill) {
  set_colour(cairo, fill.colour, fill.opacity);
}

void set_paint(cairo_t* cairo, const Shade& shade) {
  cairo_pattern_t* pattern =
      cairo_pattern_create_linear(shade.from.x, shade.from.y, shade.to.x, shade.to.y);
  for (const Shade::Stop& stop : shade.stops) {
    cairo_pattern_add_color_stop_rgba(pattern, stop.at, stop.colour.red / 255.0,
                                      stop.colour.green / 255.0, stop.colour.blue / 255.0,
                                      stop.opacity);
  }
  cairo_set_source(cairo, pattern);
  cairo_pattern_destroy(pattern);
}

void set_matrix(cairo_t* cairo, const Transform& map) {
  cairo_matrix_t matrix;
  cairo_matrix_init(&matrix, map.xx, map.yx, map.xy, map.yy, map.x0, map.y0);
  cairo_transform(cairo, &matrix);
}

void attach(const Surface& surface, const char* type, std::shared_ptr<const std::string> bytes) {
  auto* kept = new std::shared_ptr<const std::string>(std::move(bytes));
  cairo_surface_set_mime_data(
      surface.get(), type, reinterpret_cast<const unsigned char*>((*kept)->data()), (*kept)->size(),
      [](void* data) { delete static_cast<std::shared_ptr<const std::string>*>(data); }, kept);
}

Surface image_surface(bool opaque, int width, int height) {
  return Surface(
      cairo_image_surface_create(opaque ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32, width, height));
}

Surface surface_of(const picture::Pixels& pixels) {
  Surface surface = image_surface(pixels.opaque, pixels.size.width, pixels.size.height);
  cairo_surface_flush(surface.get());
  const auto width = static_cast<std::size_t>(pixels.size.width);
  for (int y = 0; y < pixels.size.height; ++y) {
    const auto* from = pixels.argb.data() + static_cast<std::size_t>(y) * width;
    unsigned char* to = cairo_image_surface_get_data(surface.get()) +
                        std::ptrdiff_t{y} * cairo_image_surface_get_stride(surface.get());
    std::memcpy(to, from, width * sizeof *from);
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

// Cairo passes the attached JPEG on, stretched to the surface, and never looks at the surface's
// pixels: one is enough.
Surface stand_in_for(const picture::Photograph& jpeg, KeptJpegs& jpegs) {
  const ImageHeader& header = jpeg.header;
  const auto data = std::make_shared<const std::string>(
      jpegs.stand_in(jpeg.bytes, header.width, header.height, header.components));
  Surface surface = image_surface(true, 1, 1);
  attach(surface, CAIRO_MIME_TYPE_JPEG, data);
  attach(surface, CAIRO_MIME_TYPE_UNIQUE_ID, data);  // drawn twice, it is in the file once
  return surface;
}

// Whether a box of the outer drawing shows any of the group's items.
bool shows_any(const Group& group, const Box& box) {
  const Box inside = bounds_of(inverse(group.placed), box);
  const std::vector<Box>& bounds = group.drawing->bounds();
  return std::any_of(bounds.begin(), bounds.end(),
                     [&](const Box& item) { return overlap(item, inside); });
}

// What is seen: items outside it are left out, and what crosses its edge is cut off there if asked.
struct Seen {
  Box box;
  bool cut = false;
};

// Cairo is asked for little: strokes of one pen that follow one another are one path, and lines are
// cut off here, since a clip that comes and goes takes more of a PDF than the lines do.
class Replay {
 public:
  Replay(cairo_t* cairo, PdfParts* pdf) : cairo_(cairo), pdf_(pdf) {}

  void draw(const Drawing& drawing, const Seen& seen) {
    const std::vector<Box>& bounds = drawing.bounds();
    for (std::size_t i = 0; i < bounds.size(); ++i) {
      if (!overlap(bounds[i], seen.box)) continue;
      const Seen of_item{seen.box, seen.cut && !contains(seen.box, bounds[i])};
      std::visit([&](const auto& item) { draw(item, of_item); }, drawing.items()[i]);
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
  void draw(const Stroke& stroke, const Seen& seen) {
    if (seen.cut && has_curves(stroke.path)) return draw_clipped(stroke, seen.box);
    // Lines that cross are darker where they are not quite opaque.
    if (pen_ != nullptr && (*pen_ != stroke.pen || stroke.pen.opacity < 1)) finish();
    pen_ = &stroke.pen;
    add_path(cairo_, seen.cut ? lines_inside(stroke.path, seen.box) : stroke.path);
  }

  void draw(const Area& area, const Seen& seen) {
    if (seen.cut && has_curves(area.path)) return draw_clipped(area, seen.box);
    finish();
    add_path(cairo_, seen.cut ? area_inside(area.path, seen.box) : area.path);
    std::visit([&](const auto& paint) { set_paint(cairo_, paint); }, area.paint);
    cairo_fill(cairo_);
  }

  void draw(const Label& label, const Seen& seen) {
    if (seen.cut) return draw_clipped(label, seen.box);
    const Saved saved(*this);
    set_matrix(cairo_, label.placed);
    set_colour(cairo_, label.text.style().colour, 1);
    show(label.text, cairo_);
  }

  void draw(const Image& image, const Seen& seen) {
    if (seen.cut) return draw_clipped(image, seen.box);
    const Saved saved(*this);
    set_matrix(cairo_, image.placed);
    const Surface surface =
        std::visit([&](const auto& c) { return surface_for(c); }, image.content);
    cairo_scale(cairo_, 1.0 / cairo_image_surface_get_width(surface.get()),
                1.0 / cairo_image_surface_get_height(surface.get()));
    cairo_set_source_surface(cairo_, surface.get(), 0, 0);
    cairo_pattern_set_filter(cairo_get_source(cairo_), CAIRO_FILTER_GOOD);
    cairo_paint(cairo_);
  }

  void draw(const Group& group, const Seen& seen) {
    if (group.clip) {
      if (const auto* path = std::get_if<Path>(&*group.clip))
        return draw_inside(group, *path, seen);
    }
    Seen inside = seen;
    if (group.clip) {
      const Box& box = std::get<Box>(*group.clip);
      inside = {seen.cut ? common(seen.box, box) : box, true};
    }
    const bool turns = group.placed.xy != 0 || group.placed.yx != 0;
    if (turns && inside.cut) {
      Group whole = group;
      whole.clip.reset();
      return draw_clipped(whole, inside.box);
    }
    if (group.repeated && pdf_ != nullptr && !inside.cut) return stamp(group);
    if (group.title.empty() || pdf_ == nullptr) return draw_content(group, inside);
    if (!shows_any(group, inside.box)) return;
    finish();
    pdf_->layers.back().push_back(group.title);
    cairo_tag_begin(cairo_, layer_tag, nullptr);
    draw_content(group, inside);
    finish();
    cairo_tag_end(cairo_, layer_tag);
  }

  void draw_inside(const Group& group, const Path& path, const Seen& seen) {
    if (seen.cut) return draw_clipped(group, seen.box);
    Group whole = group;
    whole.clip.reset();
    const Saved saved(*this);
    add_path(cairo_, path);
    cairo_clip(cairo_);
    draw(whole, Seen{bounds_of(path), false});
  }

  void draw_content(const Group& group, const Seen& seen) {
    if (!group.placed.moves()) return draw(*group.drawing, seen);
    const Saved saved(*this);
    set_matrix(cairo_, group.placed);
    draw(*group.drawing, {bounds_of(inverse(group.placed), seen.box), seen.cut});
  }

  void stamp(const Group& group) {
    const Saved saved(*this);
    set_matrix(cairo_, group.placed);
    cairo_set_source_surface(cairo_, stamp_of(group.drawing), 0, 0);
    cairo_paint(cairo_);
  }

  // A form that the PDF's pages refer to (ISO 32000-1, 8.10); made when it is first asked for.
  cairo_surface_t* stamp_of(const std::shared_ptr<const Drawing>& drawing) {
    const auto [place, is_new] = pdf_->stamps.try_emplace(drawing);
    if (!is_new) return place->second.get();
    const Box box = bounds_of(*drawing);
    const cairo_rectangle_t extents{box.x, box.y, box.width, box.height};
    place->second.reset(cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &extents));
    const Context cairo(cairo_create(place->second.get()));
    paper::draw(*drawing, cairo.get(), box, nullptr);
    return place->second.get();
  }

  Surface surface_for(const picture::Photograph& jpeg) {
    if (pdf_ != nullptr) return stand_in_for(jpeg, pdf_->jpegs);
    double across_x = 1, across_y = 0, down_x = 0, down_y = 1;
    cairo_user_to_device_distance(cairo_, &across_x, &across_y);
    cairo_user_to_device_distance(cairo_, &down_x, &down_y);
    const auto pixels =
        picture::decode(jpeg, {static_cast<int>(std::ceil(std::hypot(across_x, across_y))),
                               static_cast<int>(std::ceil(std::hypot(down_x, down_y)))});
    if (!pixels) throw std::runtime_error(pixels.error());
    return surface_of(*pixels);
  }

  Surface surface_for(const DecodedPicture& decoded) {
    Surface surface = surface_of(*decoded.pixels);
    if (pdf_ != nullptr && decoded.lossy) {
      attach(
          surface, CAIRO_MIME_TYPE_JPEG,
          std::make_shared<const std::string>(picture::encode_jpeg(*decoded.pixels, jpeg_quality)));
    }
    return surface;
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
    draw(item, Seen{box, false});
  }

  cairo_t* cairo_;
  PdfParts* pdf_;
  const Pen* pen_ = nullptr;  // of the path that waits
};

}  // namespace

void draw(const Drawing& drawing, cairo_t* cairo, const Box& visible, PdfParts* pdf) {
  cairo_save(cairo);
  cairo_set_fill_rule(cairo, CAIRO_FILL_RULE_EVEN_ODD);
  Replay replay(cairo, pdf);
  replay.draw(drawing, {visible, false});
  replay.finish();
  cairo_restore(cairo);
}

void require_success(cairo_status_t status) {
  if (status == CAIRO_STATUS_SUCCESS) return;
  throw std::runtime_error(std::string("the page could not be drawn: ") +
                           cairo_status_to_string(status));
}

}  // namespace mullion::paper
