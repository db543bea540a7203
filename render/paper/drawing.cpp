#include "render/paper/drawing.h"

#include <algorithm>
#include <cmath>

namespace mullion::paper {
namespace {

Transform placing(const Text& text, Spot spot) {
  const double part = text.style().anchor == Anchor::left     ? 0
                      : text.style().anchor == Anchor::centre ? 0.5
                                                              : 1;
  return then(then(shifted(-part * text.width(), -text.baseline()), turned(text.style().turn)),
              shifted(spot.x, spot.y));
}

Box bounds_of_clip(const std::variant<Box, Path>& clip) {
  const Box* box = std::get_if<Box>(&clip);
  return box != nullptr ? *box : bounds_of(std::get<Path>(clip));
}

struct Bounds {
  Box operator()(const Stroke& stroke) const {
    return grown(bounds_of(stroke.path), stroke.pen.width);  // mitres of right angles included
  }
  Box operator()(const Area& area) const { return bounds_of(area.path); }
  Box operator()(const Label& label) const {
    // Letters may overhang their advance box a little.
    return bounds_of(label.placed, grown({0, 0, label.text.width(), label.text.height()},
                                         0.2 * label.text.style().size));
  }
  Box operator()(const Image& image) const { return bounds_of(image.placed, {0, 0, 1, 1}); }
  Box operator()(const Group& group) const {
    const Box all = bounds_of(group.placed, bounds_of(*group.drawing));
    return group.clip ? common(all, bounds_of_clip(*group.clip)) : all;
  }
};

}  // namespace

Drawing& Drawing::add(Item item) {
  bounds_.push_back(bounds_of(item));
  items_.push_back(std::move(item));
  return *this;
}

Drawing& Drawing::stroke(Path path, Pen pen) {
  return add(Stroke{std::move(path), std::move(pen)});
}

Drawing& Drawing::fill(Path path, Fill fill) {
  return add(Area{std::move(path), fill});
}

Drawing& Drawing::shade(Path path, Shade shade) {
  return add(Area{std::move(path), std::move(shade)});
}

Drawing& Drawing::text(const std::string& content, Spot spot, const TextStyle& style) {
  if (content.empty()) return *this;
  return text(Text(content, style), spot);
}

Drawing& Drawing::text(const Text& text, Spot spot) {
  return add(Label{text, placing(text, spot)});
}

Drawing& Drawing::image(Image image) {
  return add(std::move(image));
}

Drawing& Drawing::place(Group group) {
  return add(std::move(group));
}

Drawing& Drawing::place(Drawing drawing, const Transform& placed, std::string id,
                        std::string title) {
  if (drawing.empty()) return *this;
  Group group;
  group.drawing = std::make_shared<const Drawing>(std::move(drawing));
  group.placed = placed;
  group.id = std::move(id);
  group.title = std::move(title);
  return place(std::move(group));
}

Drawing& Drawing::clipped(Drawing drawing, std::variant<Box, Path> clip) {
  if (drawing.empty()) return *this;
  Group group;
  group.drawing = std::make_shared<const Drawing>(std::move(drawing));
  group.clip = std::move(clip);
  return place(std::move(group));
}

std::size_t draw_lines(Drawing& drawing, const std::string& content, Spot spot, double width,
                       const TextStyle& style, double leading) {
  const std::vector<std::string> lines = lines_of(content, width, style);
  for (const std::string& line : lines) {
    drawing.text(line, spot, style);
    spot.y += leading;
  }
  return lines.size();
}

Box bounds_of(const Item& item) {
  return std::visit(Bounds{}, item);
}

Box bounds_of(const Drawing& drawing) {
  if (drawing.empty()) return {};
  Box all = drawing.bounds().front();
  for (const Box& box : drawing.bounds()) all = united(all, box);
  return all;
}

}  // namespace mullion::paper
