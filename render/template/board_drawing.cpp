#include "render/template/board_drawing.h"

#include <algorithm>
#include <array>

#include "engine/job/layer_name.h"
#include "engine/mat/rect.h"
#include "engine/sheets/plan/inner_rectangle.h"
#include "render/template/line_distances.h"
#include "render/template/running_dimensions.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

const Pen board_pen{0.8, {0, 0, 0}, {}, 1};
const Pen face_pen{0.35, {0x60, 0x60, 0x60}, {4, 3}, 1};
const Pen hatch_pen{0.25, {0xb0, 0xb0, 0xb0}, {}, 1};
const Pen thin_pen{0.3, {0x70, 0x70, 0x70}, {}, 1};
const Pen diagonal_pen{0.3, {0xb0, 0xb0, 0xb0}, {12, 4}, 1};
constexpr double cut_width = 0.6;
constexpr double hatch_spacing = 14;
constexpr std::array<Colour, 5> overlaid_colours{Colour{0, 0, 0},
                                                 {0x00, 0x4f, 0xb0},
                                                 {0xb0, 0x20, 0x20},
                                                 {0x10, 0x78, 0x30},
                                                 {0x7a, 0x30, 0x90}};
constexpr const char* top_of_back = mark("TOP, seen from behind");

const TextStyle groove_style{7.5, true, {0x30, 0x30, 0x30}, Anchor::left, 0};

class BoardDrawing {
 public:
  explicit BoardDrawing(const BoardView& view)
      : view_(view),
        width_(view.width()),
        board_(box(mirrored(view.layers.front()->blank, width_))) {}

  Drawing draw() {
    Drawing all;
    for (std::size_t i = 0; i < view_.layers.size(); ++i) {
      all.place(layer(i), {}, "layer-" + std::to_string(view_.layers[i]->layer->number));
    }
    Drawing marks;
    draw_board_marks(marks);
    return all.place(std::move(marks), {}, "board-marks", view_.locale.say("Board marks"));
  }

 private:
  Drawing layer(std::size_t index) {
    const BoardCuts& board = *view_.layers[index];
    const MatLayer& layer = *board.layer;
    const Pen pen = cut_pen_of(view_, index);
    const bool lowest = index + 1 == view_.layers.size();
    Drawing outer, hatching, faces, cuts, grooves;
    Labels labels;
    Pen edge = board_pen;
    if (index > 0) edge.colour = pen.colour;
    outer.stroke(paper::rectangle(box(mirrored(board.blank, width_))), edge);
    for (const Window& window : layer.windows) {
      const Box b = box(mirrored(window.back, width_));
      if (lowest) hatch(hatching, window, b);
      faces.stroke(trace(window.face_edge), face_pen);
      if (lowest) add_labels(labels, window, b);
      if (view_.scale == 1) add_distances(labels, window, b, index);
    }
    draw_cut_lines(cuts, board, pen);
    if (index == 0 && view_.grooves() != nullptr) draw_grooves(grooves, *view_.grooves(), pen);
    const std::string id = "layer-" + std::to_string(layer.number) + "-";
    const auto title = [&](const char* part) { return view_.locale.say(part, layer.number); };
    return Drawing()
        .place(std::move(hatching), {}, id + "hatching",
               title(mark("Layer %1: hatching of the waste")))
        .place(std::move(faces), {}, id + "face-edges", title(mark("Layer %1: face edges")))
        .place(std::move(outer), {}, id + "outer-edge", title(mark("Layer %1: outer edge")))
        .place(std::move(cuts), {}, id + "cut-lines", title(mark("Layer %1: cut lines")))
        .place(std::move(grooves), {}, id + "grooves",
               title(mark("Layer %1: V-grooves, cut on the back")))
        .place(drawn(std::move(labels)), {}, id + "labels",
               title(mark("Layer %1: numbers and sizes")));
  }

  double at(Length length) const { return paper::points(length) * view_.scale; }
  Box box(const Rect& rect) const {
    return {at(rect.left), at(rect.top), at(rect.width()), at(rect.height())};
  }
  paper::Path trace(const Outline& outline) const {
    return paper::transformed(paper::trace(mirrored(outline, width_)), paper::scaled(view_.scale));
  }

  // The labels' places stay free of hatching.
  void hatch(Drawing& drawing, const Window& window, const Box& b) const {
    paper::Path region = trace(window.back_edge);
    const Box label = label_box(window, b);
    if (label.width > b.width || label.height > b.height) return;
    region.append(paper::rectangle(label));
    drawing.stroke(paper::hatching(region, hatch_spacing), hatch_pen);
  }

  Spot at(const Point& point) const { return {at(width_ - point.x), at(point.y)}; }

  paper::Path trace(const BladePath& blade) const {
    if (blade.closed) return trace(blade.line);
    paper::Path path;
    path.move_to(at(blade.line.start));
    for (const Segment& segment : blade.line.segments) {
      if (segment.curved) {
        path.curve_to(at(segment.control1), at(segment.control2), at(segment.to));
      } else {
        path.line_to(at(segment.to));
      }
    }
    return path;
  }

  void draw_cut_lines(Drawing& drawing, const BoardCuts& board, const Pen& pen) const {
    paper::Path lines;
    for (const BladePath& blade : blade_paths(board.lines)) lines.append(trace(blade));
    if (!lines.empty()) drawing.stroke(std::move(lines), pen);
  }

  // The line on the back, which is cut, and dashed where the blade comes out.
  void draw_grooves(Drawing& drawing, const BoardCuts& grooves, const Pen& pen) const {
    draw_cut_lines(drawing, grooves, pen);
    for (std::size_t i = 0; i < grooves.panels.size(); ++i) {
      const Window& panel = grooves.panels[i];
      const Length width = view_.cuts->mat->grooves[i].width;
      drawing.stroke(trace(panel.face_edge), face_pen);
      name_groove(
          drawing, box(mirrored(panel.face, width_)), panel.face_edge == rectangle(panel.face),
          view_.locale.say("V-groove, %1 wide", view_.locale.described(width, view_.job->scale)));
    }
  }

  // Outside its lines; near a rectangle's corners too, so that most sheets that show it say so.
  void name_groove(Drawing& drawing, const Box& b, bool corners, const std::string& name) const {
    constexpr double off = 2.5, from_corner = 26;
    const paper::Text text(name, groove_style);
    const double wide = text.width(), high = groove_style.size * 0.73;
    if (b.width < wide) return;
    std::vector<double> places{b.x + (b.width - wide) / 2};
    if (corners && view_.scale == 1 && b.width > 4 * wide) {
      places.insert(places.end(), {b.x + from_corner, b.x + b.width - wide - from_corner});
    }
    for (const double x : places) {
      drawing.text(text, {x, b.y - off});
      drawing.text(text, {x, b.y + b.height + off + high});
    }
  }

  TextStyle number_style(const Box& b) const {
    const bool small = view_.scale < 1;
    const double least = small ? std::clamp(std::min(b.width / 2, b.height), 3.0, 6.0) : 6;
    return {std::clamp(std::min(b.width, b.height) / 4, least, small ? 22.0 : 36.0),
            true,
            {0, 0, 0},
            Anchor::centre,
            0};
  }

  std::string size_of(const Window& window) const {
    return view_.locale.say("%1 x %2",
                            dimension_text(window.back.width(), view_.job->scale, view_.locale),
                            dimension_text(window.back.height(), view_.job->scale, view_.locale));
  }

  bool shows_size(const Window& window, const Box& b) const {
    return view_.scale == 1 && b.height >= 84 &&
           paper::text_width(size_of(window), size_style) + 10 < b.width;
  }

  Box label_box(const Window& window, const Box& b) const {
    const double large = number_style(b).size;
    const bool sized = shows_size(window, b);
    double wide = paper::text_width(numbers_of(window), number_style(b)) + 8;
    if (sized) wide = std::max(wide, paper::text_width(size_of(window), size_style) + 8);
    const double above = sized ? large + 14 : large * 0.6 + 2, below = sized ? 27 : large * 0.6 + 2;
    const Spot middle = label_spot(window, view_);
    return {middle.x - wide / 2, middle.y - above, wide, above + below};
  }

  // What is of a kind is drawn together: a page is smaller so.
  struct Labels {
    paper::Path crosses, papers;
    Drawing texts;
  };

  static Drawing drawn(Labels labels) {
    Drawing drawing;
    if (!labels.papers.empty()) drawing.fill(labels.papers, {{255, 255, 255}, 1});
    if (!labels.crosses.empty()) drawing.stroke(labels.crosses, thin_pen);
    return drawing.place(std::move(labels.texts));
  }

  void add_labels(Labels& labels, const Window& window, const Box& b) const {
    const auto [x, y] = label_spot(window, view_);
    constexpr double arm = 8;
    const TextStyle large = number_style(b);
    if (shows_size(window, b)) {
      labels.crosses.append(paper::line({x - arm, y}, {x + arm, y}))
          .append(paper::line({x, y - arm}, {x, y + arm}));
      labels.texts.text(numbers_of(window), {x, y - 12}, large);
      labels.texts.text(size_of(window), {x, y + 22}, size_style);
    } else {
      labels.texts.text(numbers_of(window), {x, y + large.size * 0.36}, large);
    }
    if (view_.scale == 1) number_corners(labels, window, b);
  }

  void add_distances(Labels& labels, const Window& window, const Box& b, std::size_t index) const {
    const std::vector<Box> taken{label_box(window, b)};
    for (const LineDistance& distance : line_distances(window, view_, index, taken)) {
      labels.papers.append(paper::rectangle(paper::grown(distance.box, 1)));
      labels.texts.text(distance.text, distance.baseline);
    }
  }

  // So that a sheet that shows one corner only says whose it is.
  void number_corners(Labels& labels, const Window& window, const Box& b) const {
    constexpr double inset = 9;
    if (window.shape.kind != ShapeKind::rectangle || std::min(b.width, b.height) < 110) return;
    const paper::Text number(numbers_of(window), {10, true, {0, 0, 0}, Anchor::left, 0});
    const double wide = number.width(), high = number.style().size;
    for (const double x : {b.x + inset, b.x + b.width - inset - wide}) {
      for (const double y : {b.y + inset + high, b.y + b.height - inset}) {
        labels.papers.append(paper::rectangle({x - 2, y - high, wide + 4, high + 2.5}));
        labels.texts.text(number, {x, y});
      }
    }
  }

  // Centre ticks on the four edges, a filled corner, and a diagonal from it, so that a sheet that
  // lies the wrong way or the wrong face up is noticed.
  void draw_board_marks(Drawing& drawing) const {
    const Box& b = board_;
    const Pen pen{cut_width, {0, 0, 0}, {}, 1};
    const double x = b.x + b.width / 2, y = b.y + b.height / 2, arm = 9;
    const double leg = std::min({48.0, b.width / 5, b.height / 5});
    drawing.fill(paper::polyline({{b.x, b.y}, {b.x + leg / 2, b.y}, {b.x, b.y + leg / 2}}).close(),
                 {{0, 0, 0}, 0.25});
    drawing.stroke(paper::line({x, b.y}, {x, b.y + arm}), pen);
    drawing.stroke(paper::line({x, b.y + b.height}, {x, b.y + b.height - arm}), pen);
    drawing.stroke(paper::line({b.x, y}, {b.x + arm, y}), pen);
    drawing.stroke(paper::line({b.x + b.width, y}, {b.x + b.width - arm, y}), pen);
    drawing.stroke(paper::line({b.x + leg, b.y}, {b.x, b.y + leg}), pen);
    if (view_.scale < 1) return;
    drawing.stroke(paper::line({b.x + leg / 2, b.y + leg / 2}, {b.x + b.width, b.y + b.height}),
                   diagonal_pen);
    // Inside the edges of all blanks.
    const double inside = at(view_.layers.back()->blank.top - view_.layers.front()->blank.top);
    drawing.text(view_.locale.say(top_of_back), {b.x + leg + 5, b.y + inside + 14},
                 {11, true, {0, 0, 0}, Anchor::left, 0});
    name_board(drawing, inside, leg + 5);
  }

  // Inside what is trimmed to the board, so that a template whose paper is cut off still says whose
  // it is: below the edge, or above the lower edge where an opening leaves more room.
  void name_board(Drawing& drawing, double inside, double from_left) const {
    const TextStyle style{8, false, {0, 0, 0}, Anchor::left, 0};
    const Box& b = board_;
    double highest = b.y + b.height, lowest = b.y;
    for (const Window& window : view_.layers.front()->windows()) {
      const Box w = box(mirrored(window.face, width_));
      highest = std::min(highest, w.y);
      lowest = std::max(lowest, w.y + w.height);
    }
    const double below_top = b.y + inside + 25;
    const bool above = below_top + 4 < highest || highest - b.y >= b.y + b.height - lowest;
    const std::string name = paper::fitted(sheet_subject(view_), b.width - 2 * from_left, style);
    drawing.text(name, {b.x + from_left, above ? below_top : b.y + b.height - inside - 6}, style);
  }

  static const TextStyle size_style;

  const BoardView& view_;
  Length width_;
  Box board_;
};

const TextStyle BoardDrawing::size_style{12, false, {0, 0, 0}, Anchor::centre, 0};

// Every line of straight level sides can be set off from the board's edges; of other shapes their
// outermost places.
std::vector<Point> measured_corners(const Window& window) {
  std::vector<Point> corners;
  const Outline outline =
      window.shape.kind == ShapeKind::stepped ? window.back_edge : rectangle(window.back);
  for (const Segment& segment : outline.segments) corners.push_back(segment.to);
  return corners;
}

}  // namespace

std::string numbers_of(const Window& window, const char* between) {
  std::string numbers;
  for (const int number : window.openings) {
    numbers += (numbers.empty() ? "" : between) + std::to_string(number);
  }
  return numbers;
}

Spot label_spot(const Window& window, const BoardView& view) {
  Rect within = window.back;
  const Point middle{half_rounded_down(within.left + within.right),
                     half_rounded_down(within.top + within.bottom)};
  if (!contains(window.back_edge, middle)) {
    within = inner_rectangle(window.back_edge).value_or(within);
  }
  const Rect behind = mirrored(within, view.width());
  return {paper::points(behind.left + behind.right) / 2 * view.scale,
          paper::points(behind.top + behind.bottom) / 2 * view.scale};
}

Drawing draw_board(const BoardView& view) {
  return BoardDrawing(view).draw();
}

Drawing draw_board_dimensions(const BoardView& view, bool* complete) {
  const Length width = view.width();
  const Rect board = mirrored(view.layers.front()->blank, width);
  const auto at = [&](Length length) { return paper::points(length) * view.scale; };
  std::vector<DimensionMark> from_left, from_right, from_top, from_bottom;
  const auto measure = [&](const std::vector<Window>& windows, const std::string& before) {
    for (const Window& window : windows) {
      for (const Point& corner : measured_corners(window)) {
        const Length x = width - corner.x, y = corner.y;
        from_left.push_back({x - board.left, at(x), before});
        from_right.push_back({board.right - x, at(x), before});
        from_top.push_back({y - board.top, at(y), before});
        from_bottom.push_back({board.bottom - y, at(y), before});
      }
    }
  };
  for (const BoardCuts* layer : view.layers) measure(layer->windows(), "");
  if (const BoardCuts* grooves = view.grooves()) measure(grooves->panels, "V ");
  const double left = at(board.left), right = at(board.right);
  const double top = at(board.top), bottom = at(board.bottom);
  const Scale& scale = view.job->scale;
  const double size = view.scale < 1 ? 7.5 : 10;
  Drawing drawing;
  bool all = true;
  const auto draw = [&](std::vector<DimensionMark>& marks, DimensionSide side, double edge,
                        double from, double to) {
    const bool drawn = draw_running_dimensions(drawing, std::move(marks), side, edge, from, to,
                                               size, scale, view.locale);
    all = all && drawn;
  };
  draw(from_left, DimensionSide::above, top, left, right);
  draw(from_right, DimensionSide::below, bottom, left, right);
  draw(from_top, DimensionSide::left, left, top, bottom);
  draw(from_bottom, DimensionSide::right, right, top, bottom);
  if (complete != nullptr) *complete = all;
  return drawing;
}

std::string layer_title(const BoardView& view, const BoardCuts& board) {
  const MatLayer& layer = *board.layer;
  const std::size_t count = view.cuts->layers.size();
  if (layer.board.name.empty()) return view.locale.say("Layer %1 of %2", layer.number, count);
  return view.locale.say("Layer %1 of %2: %3", layer.number, count,
                         name_on_paper(layer.board.name, layer.number, view.locale));
}

std::string title_of(const BoardView& view) {
  return view.layers.size() > 1 ? view.locale.say("All layers")
                                : layer_title(view, *view.layers.front());
}

Pen cut_pen_of(const BoardView& view, std::size_t index) {
  const Colour colour =
      view.layers.size() == 1 ? Colour{} : overlaid_colours[index % overlaid_colours.size()];
  return {cut_width * (1 + 0.8 * static_cast<double>(index)), colour, {}, 1};
}

}  // namespace mullion
