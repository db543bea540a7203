#include "render/template/plot.h"

#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

const paper::Pen hairline{0.072, {0, 0, 0}, {}, 1};  // 1/1000 in

Outline outline_of(const Rect& rect) {
  return polygon({{rect.left, rect.top},
                  {rect.right, rect.top},
                  {rect.right, rect.bottom},
                  {rect.left, rect.bottom}});
}

// Seen from behind, with the origin at the corner of the outer edge.
Outline from_behind(const Outline& outline, Length width, const Rect& behind) {
  Outline result = mirrored(outline, width);
  const auto move = [&](Point& point) { point = {point.x - behind.left, point.y - behind.top}; };
  move(result.start);
  for (Segment& segment : result.segments) {
    move(segment.control1);
    move(segment.control2);
    move(segment.to);
  }
  return result;
}

std::string id_of(const Window& window) {
  std::string id = "opening";
  for (const int number : window.openings) id += "-" + std::to_string(number);
  return id;
}

tl::expected<Outline, std::string> shrunk(const Window& window, Length by) {
  if (by == Length()) return window.back_edge;
  if (window.back.width() <= by * 2 || window.back.height() <= by * 2) {
    return tl::unexpected(id_of(window) + " is smaller than the kerf");
  }
  if (window.shape.kind == ShapeKind::rectangle) {
    return outline_of(inset(window.back, {by, by, by, by}));
  }
  return parallel(window.back_edge, Length() - by);
}

}  // namespace

tl::expected<Plot, std::string> plot_of(const Cuts& cuts, const BoardCuts& board, Length kerf) {
  const Length half = half_rounded_down(kerf), width = cuts.mat->outer.width();
  const Rect outer = outset(board.blank, half);
  Plot plot{outer.width(), outer.height(), {}};
  const Rect behind = mirrored(outer, width);
  const auto add = [&](PlotLine::Kind kind, const std::string& id, const Outline& line) {
    plot.lines.push_back({kind, id, from_behind(line, width, behind)});
  };
  for (const Window& window : board.windows()) {
    const auto line = shrunk(window, half);
    if (!line) return tl::unexpected(line.error());
    add(PlotLine::Kind::opening, id_of(window), *line);
  }
  if (board.layer->number == 1 && cuts.grooves) {
    const std::vector<Window>& panels = cuts.grooves->panels;
    for (std::size_t i = 0; i < panels.size(); ++i) {
      add(PlotLine::Kind::groove, "groove-" + std::to_string(i + 1), panels[i].back_edge);
    }
  }
  add(PlotLine::Kind::outer_edge, "outer-edge", outline_of(outer));
  return plot;
}

SheetPage plot_page(const Plot& plot, const std::string& title) {
  SheetPage page{{plot.width, plot.height}, title, {}};
  for (const PlotLine& line : plot.lines) {
    paper::Drawing drawing;
    drawing.stroke(paper::trace(line.outline), hairline);
    page.drawing.place(std::move(drawing), {}, line.id);
  }
  return page;
}

}  // namespace mullion
