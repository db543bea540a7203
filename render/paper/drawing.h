#pragma once

// A drawing: a list of strokes, fills, texts and groups, as a value. It may be placed on many pages
// and at many scales; a page of it holds only what is seen there. Units are points (1/72 in).
//
//   Drawing drawing;
//   drawing.fill(rectangle({0, 0, 72, 36}), {{0xee, 0xee, 0xee}});
//   drawing.stroke(line({0, 18}, {72, 18}), {.width = 0.5, .dashes = {4, 2}});
//   drawing.text("8 1/2", {36, 16}, {.size = 8, .anchor = Anchor::centre});
//
//   draw(drawing, document.add_page(size, "Page 1"));

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "render/paper/document.h"
#include "render/paper/text.h"

namespace mullion::paper {

class Drawing;

struct Stroke {
  Path path;
  Pen pen;
};

struct Area {
  Path path;  // inside by the even-odd rule
  Fill fill;
};

struct Label {
  Text text;
  Transform placed;  // from the text's upper left corner
};

// Another drawing, placed, perhaps clipped to a box of the outer drawing's coordinates. The id and
// title name a group of an SVG; a title is a layer of a PDF, which viewers can hide. Groups with
// titles do not nest. A PDF holds a repeated drawing once for all pages that show the whole of it.
struct Group {
  std::shared_ptr<const Drawing> drawing;
  Transform placed;
  std::optional<Box> clip;
  std::string id;
  std::string title;
  bool repeated = false;
};

using Item = std::variant<Stroke, Area, Label, Group>;

class Drawing {
 public:
  Drawing& stroke(Path path, Pen pen = {});
  Drawing& fill(Path path, Fill fill);
  // The spot is where the first baseline starts, its middle or its end, by the style's anchor.
  Drawing& text(const std::string& content, Spot spot, const TextStyle& style);
  Drawing& text(const Text& text, Spot spot);
  Drawing& place(Group group);
  // An empty drawing leaves no group.
  Drawing& place(Drawing drawing, const Transform& placed = {}, std::string id = {},
                 std::string title = {});

  const std::vector<Item>& items() const { return items_; }
  const std::vector<Box>& bounds() const { return bounds_; }  // of each item
  bool empty() const { return items_.empty(); }

 private:
  Drawing& add(Item item);

  std::vector<Item> items_;
  std::vector<Box> bounds_;
};

double text_width(const std::string& content, const TextStyle& style);
// The longest beginning of the text that fits, ended by an ellipsis where it was cut.
std::string fitted(const std::string& content, double width, const TextStyle& style);

// Around all that the item or drawing shows, widths of pens included.
Box bounds_of(const Item& item);
Box bounds_of(const Drawing& drawing);

// What lies outside the visible box is left out, item by item and, in strokes, subpath by subpath.
void draw(const Drawing& drawing, Canvas& canvas, const Box& visible);
void draw(const Drawing& drawing, Canvas& canvas);

// An SVG whose size is in mm and whose user unit is 1 mm; texts are outlines named by aria-label.
std::string write_svg(const Drawing& drawing, const PageSize& size, const std::string& title);

}  // namespace mullion::paper
