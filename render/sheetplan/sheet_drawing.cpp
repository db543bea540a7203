#include "render/sheetplan/sheet_drawing.h"

#include <algorithm>
#include <cmath>

#include "engine/sheets/stock/size_text.h"
#include "render/sheetplan/type.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

const Pen edge_pen{0.9, {0, 0, 0}, {}, 1};
const Pen cut_pen{0.8, {0xb0, 0x20, 0x20}, {}, 1};
const Pen hatch_pen{0.3, {0x9a, 0x9a, 0x9a}, {}, 1};
const paper::Fill blank_fill{{0xf1, 0xf4, 0xf8}, 1};
const paper::Fill paper_fill{{0xff, 0xff, 0xff}, 1};
constexpr double hatch_spacing = 4.25;
constexpr double bubble = 6.2;  // radius of a cut's number
constexpr double line_height = 9;

class SheetPainter {
 public:
  SheetPainter(paper::Drawing& page, const SheetDrawing& drawing, const Box& box)
      : page_(page), drawing_(drawing), scale_(drawing.report.plan.scale) {
    const double width = paper::points(drawing.sheet.width);
    const double height = paper::points(drawing.sheet.height);
    factor_ = std::min(box.width / width, box.height / height);
    origin_ = {box.x + (box.width - factor_ * width) / 2, box.y};
  }

  double draw() {
    const Box whole = on_paper({{}, {}, drawing_.sheet.width, drawing_.sheet.height});
    hatch(whole);
    for (const PlacedBlank& blank :
         blanks_in(drawing_.sheet.pattern, drawing_.report.plan.limits.kerf)) {
      draw_blank(blank);
    }
    for (const KeptOffcut& offcut : drawing_.kept) {
      if (offcut.sheet == drawing_.sheet.number) draw_offcut(offcut);
    }
    page_.stroke(paper::rectangle(whole), edge_pen);
    for (const NumberedCut& cut : drawing_.cuts) {
      page_.stroke(paper::line(on_paper(cut.from), on_paper(cut.to)), cut_pen);
    }
    for (const NumberedCut& cut : drawing_.cuts) draw_number(cut);
    return factor_;
  }

 private:
  Spot on_paper(const Point& point) const {
    return {origin_.x + factor_ * paper::points(point.x),
            origin_.y + factor_ * paper::points(point.y)};
  }

  Box on_paper(const Rect& rect) const {
    const Spot corner = on_paper(Point{rect.left, rect.top});
    return {corner.x, corner.y, factor_ * paper::points(rect.width()),
            factor_ * paper::points(rect.height())};
  }

  void hatch(const Box& box) {
    page_.stroke(paper::hatching(paper::rectangle(box), hatch_spacing), hatch_pen);
  }

  void draw_blank(const PlacedBlank& placed) {
    const Length left = drawing_.sheet.trim.left + placed.left;
    const Length top = drawing_.sheet.trim.top + placed.top;
    const Box box = on_paper({left, top, left + placed.width, top + placed.height});
    page_.fill(paper::rectangle(box), blank_fill);
    const BlankCopy& copy = drawing_.sheet.blanks[static_cast<std::size_t>(placed.blank)];
    const BlankOrder& line = drawing_.board.lines[static_cast<std::size_t>(copy.line)];
    const Locale& locale = drawing_.locale;
    std::string size = size_text(placed.width, placed.height, scale_, locale);
    if (placed.turned) size = locale.say("%1, turned", size);
    write_in(box,
             {size, line.order, locale.say("%1, %2 of %3", line.layer, copy.copy, line.quantity)});
  }

  void draw_offcut(const KeptOffcut& offcut) {
    const Box box = on_paper(offcut.rect);
    page_.fill(paper::rectangle(box), paper_fill);
    write_in(box, {drawing_.locale.say("keep: %1", offcut.piece.id),
                   size_text(offcut.piece.width, offcut.piece.height, scale_, drawing_.locale)});
  }

  // As many of the lines as there is room for, in the middle of the box; along it where it is
  // narrow.
  void write_in(const Box& box, const std::vector<std::string>& lines) {
    const bool upright = box.height > box.width && box.width < 60;
    const double room_along = (upright ? box.height : box.width) - 2 * bubble - 6;
    const double room_across = upright ? box.width : box.height;
    const auto fitting = static_cast<std::size_t>(std::max(0.0, room_across / line_height));
    const std::size_t count = std::min(lines.size(), fitting);
    const Spot middle{box.x + box.width / 2, box.y + box.height / 2};
    double across = -static_cast<double>(count) * line_height / 2 + 0.75 * line_height;
    for (std::size_t i = 0; i < count; ++i) {
      TextStyle style{i == 0 ? 7.5 : 6.5, i == 0, {0, 0, 0}, Anchor::centre, upright ? -90.0 : 0.0};
      style = paper::narrowed(lines[i], room_along, style, least_type);
      const std::string text = paper::fitted(lines[i], room_along, style);
      page_.text(text,
                 upright ? Spot{middle.x + across, middle.y} : Spot{middle.x, middle.y + across},
                 style);
      across += line_height;
    }
  }

  // On the line, near its beginning, clear of the numbers that are there already.
  void draw_number(const NumberedCut& cut) {
    const Spot from = on_paper(cut.from), to = on_paper(cut.to);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    Spot spot{(from.x + to.x) / 2, (from.y + to.y) / 2};
    for (double along = bubble + 2; along < length - bubble; along += bubble / 2) {
      const Spot candidate{from.x + (to.x - from.x) * along / length,
                           from.y + (to.y - from.y) * along / length};
      if (!clear(candidate)) continue;
      spot = candidate;
      break;
    }
    numbers_.push_back(spot);
    page_.fill(paper::circle(spot, bubble), paper_fill);
    page_.stroke(paper::circle(spot, bubble), {0.6, cut_pen.colour, {}, 1});
    const TextStyle style{cut.number > 99 ? 5.0 : 7.0, true, cut_pen.colour, Anchor::centre, 0};
    page_.text(std::to_string(cut.number), {spot.x, spot.y + 2.5}, style);
  }

  bool clear(const Spot& spot) const {
    return std::none_of(numbers_.begin(), numbers_.end(), [&spot](const Spot& other) {
      return std::hypot(spot.x - other.x, spot.y - other.y) < 2 * bubble + 1;
    });
  }

  paper::Drawing& page_;
  const SheetDrawing& drawing_;
  const Scale& scale_;
  double factor_ = 1;
  Spot origin_;
  std::vector<Spot> numbers_;
};

}  // namespace

double draw_sheet(paper::Drawing& page, const SheetDrawing& drawing, const Box& box) {
  return SheetPainter(page, drawing, box).draw();
}

}  // namespace mullion
