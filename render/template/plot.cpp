#include "render/template/plot.h"

#include <algorithm>

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

std::string id_of(const Window& window) {
  return "opening-" + numbers_of(window, "-");
}

tl::expected<Outline, std::string> shrunk(const Window& window, Length by, bool from_front) {
  const Outline& edge = from_front ? window.face_edge : window.back_edge;
  const Rect& box = from_front ? window.face : window.back;
  if (by == Length()) return edge;
  if (box.width() <= by * 2 || box.height() <= by * 2) {
    return tl::unexpected(id_of(window) + " is smaller than the kerf");
  }
  if (window.shape.kind == ShapeKind::rectangle) return outline_of(inset(box, {by, by, by, by}));
  return parallel(edge, Length() - by);
}

class Plotter {
 public:
  Plotter(const BoardView& view, const PlotOptions& options)
      : view_(view), options_(options), half_(half_rounded_down(options.kerf)) {
    const Rect first = seen(view.layers.front()->blank);
    left_ = first.left;
    top_ = first.top;
    around_ = half_ + options.leads.in;
    plot_.page = placed(seen(outset(view.layers.front()->blank, around_)));
  }

  tl::expected<Plot, std::string> plot() {
    for (const BoardCuts* board : view_.layers) {
      if (auto wrong = add(*board); !wrong.empty()) return tl::unexpected(std::move(wrong));
    }
    return std::move(plot_);
  }

 private:
  // Says what is wrong, if anything is.
  std::string add(const BoardCuts& board) {
    std::string wrong;
    const auto line = [&](PlotLine::Kind kind, const std::string& id, const Outline& outline) {
      if (wrong.empty()) wrong = add(board.layer->number, kind, id, outline);
    };
    for (const Window& window : board.windows()) {
      const auto edge = shrunk(window, half_, options_.from_front);
      if (!edge) return edge.error();
      line(PlotLine::Kind::opening, id_of(window), *edge);
    }
    if (board.layer->number == 1 && view_.cuts->grooves) {
      const std::vector<Window>& panels = view_.cuts->grooves->panels;
      for (std::size_t i = 0; i < panels.size(); ++i) {
        line(PlotLine::Kind::groove, "groove-" + std::to_string(i + 1),
             options_.from_front ? panels[i].face_edge : panels[i].back_edge);
      }
    }
    line(PlotLine::Kind::outer_edge, "outer-edge", outline_of(outset(board.blank, half_)));
    const Rect page = placed(seen(outset(board.blank, around_)));
    plot_.page = {std::min(plot_.page.left, page.left), std::min(plot_.page.top, page.top),
                  std::max(plot_.page.right, page.right), std::max(plot_.page.bottom, page.bottom)};
    plot_.titles.push_back(title(board));
    return wrong;
  }

  std::string add(int layer, PlotLine::Kind kind, const std::string& id, const Outline& outline) {
    const Outline as_seen = options_.from_front ? outline : mirrored(outline, view_.width());
    PlotLine line{kind, layer, id, translated(as_seen, Length() - left_, Length() - top_),
                  {},   false};
    line.path = tool_path(line.outline);
    line.led = kind != PlotLine::Kind::groove &&
               (options_.leads.in > Length() || options_.leads.over_cut > Length());
    if (line.led) {
      const auto led =
          with_leads(line.path, options_.leads,
                     kind == PlotLine::Kind::opening ? WasteSide::inside : WasteSide::outside);
      if (!led) return id + ": " + led.error();
      line.path = *led;
    }
    plot_.lines.push_back(std::move(line));
    return "";
  }

  std::string title(const BoardCuts& board) const {
    const std::string name = view_.job->reference.empty()
                                 ? layer_title(view_, board)
                                 : view_.job->reference + ", " + layer_title(view_, board);
    return name + ", " + board.layer->board.board + ", " +
           view_.locale.say(options_.from_front ? mark("seen from the front")
                                                : mark("seen from behind"));
  }

  Rect seen(const Rect& rect) const {
    return options_.from_front ? rect : mirrored(rect, view_.width());
  }
  Rect placed(const Rect& rect) const {
    return {rect.left - left_, rect.top - top_, rect.right - left_, rect.bottom - top_};
  }

  const BoardView& view_;
  const PlotOptions& options_;
  Length half_, around_, left_, top_;
  Plot plot_;
};

paper::Drawing drawn(const PlotLine& line) {
  paper::Drawing drawing;
  drawing.stroke(line.led ? traced(line.path) : paper::trace(line.outline), hairline);
  return drawing;
}

}  // namespace

tl::expected<Plot, std::string> plot_of(const BoardView& view, const PlotOptions& options) {
  return Plotter(view, options).plot();
}

SheetPage plot_page(const Plot& plot, const std::string& title) {
  SheetPage page{{plot.page.width(), plot.page.height()}, title, {}};
  const paper::Transform placed =
      paper::shifted(-paper::points(plot.page.left), -paper::points(plot.page.top));
  const bool several = plot.titles.size() > 1;
  for (std::size_t i = 0; i < plot.lines.size();) {
    const int layer = plot.lines[i].layer;
    const std::string before = several ? "layer-" + std::to_string(layer) + "-" : "";
    paper::Drawing lines;
    for (; i < plot.lines.size() && plot.lines[i].layer == layer; ++i) {
      lines.place(drawn(plot.lines[i]), placed, before + plot.lines[i].id);
    }
    page.drawing.place(std::move(lines), {}, several ? "layer-" + std::to_string(layer) : "");
  }
  return page;
}

}  // namespace mullion
