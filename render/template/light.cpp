#include "render/template/light.h"

#include <algorithm>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/template/running_dimensions.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Drawing;

const paper::Pen grid_pen{0.5, {0x48, 0x48, 0x48}, {}, 1},
    measured_pen{1.2, {0x60, 0xd0, 0x60}, {}, 1};
constexpr double heavier = 2;  // pens: light spreads less than ink
constexpr Length dark_margin = inches(1);

Colour inverted(const Colour& colour) {
  const auto channel = [](auto value) { return static_cast<decltype(value)>(0xff - value); };
  return {channel(colour.red), channel(colour.green), channel(colour.blue)};
}

Drawing inverted(const Drawing& drawing);

struct Invert {
  Drawing& to;

  void operator()(const paper::Stroke& stroke) const {
    paper::Pen pen = stroke.pen;
    pen.colour = inverted(pen.colour);
    pen.width *= heavier;
    to.stroke(stroke.path, pen);
  }
  void operator()(const paper::Area& area) const {
    const auto* fill = std::get_if<paper::Fill>(&area.paint);
    if (fill != nullptr) to.fill(area.path, {inverted(fill->colour), fill->opacity});
  }
  void operator()(const paper::Label& label) const {
    paper::TextStyle style = label.text.style();
    style.colour = inverted(style.colour);
    style.anchor = Anchor::left;
    style.turn = 0;  // the place turns it
    Drawing text;
    text.text(label.text.content(), {0, label.text.baseline()}, style);
    to.place(std::move(text), label.placed);
  }
  void operator()(const paper::Image& image) const { to.image(image); }
  void operator()(const paper::Group& group) const {
    if (group.id.ends_with("hatching")) return;
    paper::Group turned = group;
    turned.drawing = std::make_shared<const Drawing>(inverted(*group.drawing));
    to.place(std::move(turned));
  }
};

Drawing inverted(const Drawing& drawing) {
  Drawing result;
  for (const paper::Item& item : drawing.items()) std::visit(Invert{result}, item);
  return result;
}

Drawing grid(const Rect& board, Length step) {
  paper::Path lines;
  const double left = paper::points(board.left), right = paper::points(board.right);
  const double top = paper::points(board.top), bottom = paper::points(board.bottom);
  for (Length x = board.left; x <= board.right; x += step) {
    lines.append(paper::line({paper::points(x), top}, {paper::points(x), bottom}));
  }
  for (Length y = board.top; y <= board.bottom; y += step) {
    lines.append(paper::line({left, paper::points(y)}, {right, paper::points(y)}));
  }
  Drawing drawing;
  drawing.stroke(std::move(lines), grid_pen);
  return drawing;
}

// The largest rectangle of whole steps, from the board's corner; its sides in the ratio 3 to 4, so
// that its diagonal is whole too (3, 4, 5).
Drawing measured(const BoardView& view, const Rect& board, Length step) {
  const bool wide = board.width() >= board.height();
  const Length longer = wide ? board.width() : board.height(),
               shorter = wide ? board.height() : board.width();
  const std::int64_t unit =
      std::min(longer.ticks() / (4 * step.ticks()), shorter.ticks() / (3 * step.ticks()));
  Drawing drawing;
  if (unit == 0) return drawing;
  const Length four = step * (4 * unit), three = step * (3 * unit);
  const Length width = wide ? four : three, height = wide ? three : four;
  const paper::Box box{paper::points(board.left), paper::points(board.top), paper::points(width),
                       paper::points(height)};
  drawing.stroke(paper::rectangle(box), measured_pen);
  drawing.stroke(paper::line({box.x, box.y}, {box.x + box.width, box.y + box.height}),
                 measured_pen);
  const Locale& locale = view.locale;
  const Scale& scale = view.job->scale;
  drawing.text(
      locale.say("this rectangle is %1 by %2, its diagonal %3", locale.described(width, scale),
                 locale.described(height, scale), locale.described(step * (5 * unit), scale)),
      {box.x, paper::points(board.bottom + dark_margin) - 26},
      {14, true, measured_pen.colour, Anchor::left, 0});
  return drawing;
}

}  // namespace

SheetPage light_page(const BoardView& view) {
  const Rect board = mirrored(view.layers.front()->blank, view.width());
  const Length step = view.job->scale.unit == Unit::inch ? inches(1) : millimetres(20);
  const paper::PageSize size{board.width() + dark_margin * 2, board.height() + dark_margin * 2};
  Drawing content;
  content.place(grid(board, step), {}, "grid", view.locale.say("Grid"))
      .place(inverted(draw_board(view)), {}, "board")
      .place(measured(view, board, step), {}, "measured", view.locale.say("Measured rectangle"));
  SheetPage page{size, title_of(view), {}};
  page.drawing.fill(paper::rectangle({0, 0, paper::points(size.width), paper::points(size.height)}),
                    {{0, 0, 0}, 1});
  page.drawing.place(std::move(content), paper::shifted(paper::points(dark_margin - board.left),
                                                        paper::points(dark_margin - board.top)));
  return page;
}

}  // namespace mullion
