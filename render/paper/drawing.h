#pragma once

// A drawing: a list of strokes, fills, texts, pictures and groups, as a value. It may be placed on
// many pages and at many scales; a page of it holds only what is seen there. Units are points
// (1/72 in).
//
//   Drawing drawing;
//   drawing.fill(rectangle({0, 0, 72, 36}), {{0xee, 0xee, 0xee}});
//   drawing.stroke(line({0, 18}, {72, 18}), {.width = 0.5, .dashes = {4, 2}});
//   drawing.text("8 1/2", {36, 16}, {.size = 8, .anchor = Anchor::centre});
//
//   write_pdf({{size, "Page 1", drawing}}, {.title = "Example"});

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "render/paper/text.h"
#include "render/picture/photograph.h"
#include "render/picture/pixels.h"

namespace mullion::paper {

class Drawing;

struct Pen {
  double width = 0.5;
  Colour colour{0, 0, 0};
  std::vector<double> dashes;
  double opacity = 1;
  friend bool operator==(const Pen&, const Pen&) = default;
};

struct Fill {
  Colour colour;
  double opacity = 1;
};

// Colours that change along a line, the same across it; beyond its ends as at its ends.
struct Shade {
  struct Stop {
    double at = 0;  // 0: `from`, 1: `to`
    Colour colour;
    double opacity = 1;
  };
  Spot from, to;
  std::vector<Stop> stops;
};

struct Stroke {
  Path path;
  Pen pen;
};

struct Area {
  Path path;  // inside by the even-odd rule
  std::variant<Fill, Shade> paint;
};

struct Label {
  Text text;
  Transform placed;  // from the text's upper left corner
};

struct DecodedPicture {
  std::shared_ptr<const picture::Pixels> pixels;
  bool lossy = false;  // a PDF or SVG may hold it as a JPEG
};

// A picture as it is stored, turned and stretched by `placed` from the square {0, 0, 1, 1}. The
// data of a JPEG file go into a PDF byte for byte, and into an SVG without their Exif data.
struct Image {
  std::variant<picture::Photograph, DecodedPicture> content;  // a photograph is a JPEG
  Transform placed;
};

// Another drawing, placed, perhaps clipped to a box or path of the outer drawing's coordinates. The
// id and title name a group of an SVG; a title is a layer of a PDF, which viewers can hide. Groups
// with titles do not nest. A PDF holds a repeated drawing once for all pages that show the whole of
// it.
struct Group {
  std::shared_ptr<const Drawing> drawing;
  Transform placed;
  std::optional<std::variant<Box, Path>> clip;  // a path by the even-odd rule
  std::string id;
  std::string title;
  bool repeated = false;
};

using Item = std::variant<Stroke, Area, Label, Image, Group>;

class Drawing {
 public:
  Drawing& stroke(Path path, Pen pen = {});
  Drawing& fill(Path path, Fill fill);
  Drawing& shade(Path path, Shade shade);
  // The spot is where the first baseline starts, its middle or its end, by the style's anchor.
  Drawing& text(const std::string& content, Spot spot, const TextStyle& style);
  Drawing& text(const Text& text, Spot spot);
  Drawing& image(Image image);
  Drawing& place(Group group);
  // An empty drawing leaves no group.
  Drawing& place(Drawing drawing, const Transform& placed = {}, std::string id = {},
                 std::string title = {});
  Drawing& clipped(Drawing drawing, std::variant<Box, Path> clip);

  const std::vector<Item>& items() const { return items_; }
  const std::vector<Box>& bounds() const { return bounds_; }  // of each item
  bool empty() const { return items_.empty(); }

 private:
  Drawing& add(Item item);

  std::vector<Item> items_;
  std::vector<Box> bounds_;
};

// A text broken into lines of that width, the first baseline at the spot and `leading` from each to
// the next. Returns how many lines there are.
std::size_t draw_lines(Drawing& drawing, const std::string& content, Spot spot, double width,
                       const TextStyle& style, double leading);

// Around all that the item or drawing shows, widths of pens included.
Box bounds_of(const Item& item);
Box bounds_of(const Drawing& drawing);

}  // namespace mullion::paper
