#include "render/cutsheet/board_diagram.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "render/cutsheet/look.h"

namespace mullion::cutsheet {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Pen;
using paper::Spot;

constexpr Colour board_colour{0xf4, 0xf2, 0xec};
constexpr Colour metal{0x55, 0x5b, 0x60};
constexpr Colour line_colour{0x78, 0x78, 0x78};
constexpr Colour opening_colour{0x8a, 0x8a, 0x8a};
constexpr Colour now{0xc0, 0x20, 0x10};
constexpr double bar = 4;  // width of guide and arm

Pen solid(double width, Colour colour) {
  return {.width = width, .colour = colour, .dashes = {}};
}

// What is drawn in a diagram, so that a number finds a place beside it.
class Taken {
 public:
  void add(Spot a, Spot b) { lines_.push_back({a, b}); }
  void add(const Box& box) { boxes_.push_back(box); }

  // How many lines and texts lie under the box.
  int under(const Box& box) const {
    int count = 0;
    for (const auto& [a, b] : lines_) count += meets(box, a, b) ? 1 : 0;
    for (const Box& other : boxes_) {
      const bool apart = other.x > box.x + box.width || box.x > other.x + other.width ||
                         other.y > box.y + box.height || box.y > other.y + other.height;
      count += apart ? 0 : 2;
    }
    return count;
  }

 private:
  // By what of the line is left between the box's sides (Liang and Barsky's clipping).
  static bool meets(const Box& box, Spot a, Spot b) {
    double from = 0, to = 1;
    const auto clip = [&](double start, double step, double least, double most) {
      if (std::abs(step) < 1e-9) return start >= least && start <= most;
      const double p = (least - start) / step, q = (most - start) / step;
      from = std::max(from, std::min(p, q));
      to = std::min(to, std::max(p, q));
      return from <= to;
    };
    return clip(a.x, b.x - a.x, box.x, box.x + box.width) &&
           clip(a.y, b.y - a.y, box.y, box.y + box.height);
  }

  std::vector<std::pair<Spot, Spot>> lines_;
  std::vector<Box> boxes_;
};

Box text_box(Spot middle, double width, double type) {
  return {middle.x - width / 2, middle.y - type * 0.45, width, type * 0.9};
}

class Diagram {
 public:
  Diagram(Drawing& page, const BoardPicture& board, BoardEdge at_guide, const Box& box)
      : page_(page),
        board_(board),
        view_(board.plan.outer, at_guide, board.plan.cutter.side, box, bar + board.type * 1.15),
        type_(board.type) {}

  void draw_ground() {
    page_.fill(paper::rectangle(view_.board()), {board_colour});
    page_.stroke(paper::rectangle(view_.board()), solid(0.8, {0, 0, 0}));
    draw_letters();
    draw_curves({.width = 0.6, .colour = line_colour, .dashes = {1.5, 2}});
  }

  // Once all lines are there: each where it lies on none, as near the opening's middle as it can
  // be.
  void draw_openings() {
    for (const OpeningMark& mark : board_.openings) {
      const Spot middle = view_.place(mark.middle);
      const double wide = paper::text_width(mark.number, {.size = type_});
      const double step = type_ * 0.6;
      Spot best = middle;
      int least = std::numeric_limits<int>::max();
      for (const auto& [right, down] : std::initializer_list<std::pair<int, int>>{
               {0, 0}, {0, 1}, {0, -1}, {1, 0}, {-1, 0}, {1, 1}, {-1, -1}, {1, -1}, {-1, 1}}) {
        const Spot at{middle.x + right * step, middle.y + down * step};
        const int under = taken_.under(text_box(at, wide, type_));
        if (under >= least) continue;
        best = at;
        least = under;
      }
      taken_.add(text_box(best, wide, type_));
      page_.text(mark.number, {best.x, best.y + type_ * 0.36},
                 {.size = type_, .colour = opening_colour, .anchor = Anchor::centre});
    }
  }

  void draw_curves(const Pen& pen) {
    for (const CurveCut& curve : board_.stage.curves) {
      if (curve.kind == CurveKind::oval) draw_oval(curve, pen);
      for (const CurveLine& line : curve.lines) draw_template(line, pen);
    }
  }
  void draw_curves_to_cut() { draw_curves(solid(2, now)); }

  // Cuts of a lower number are there already.
  void draw_lines(int first_number) {
    for (const BoardLine& line : board_.lines) {
      const bool cut = line.number < first_number;
      Pen pen = solid(cut ? 0.9 : 0.6, line_colour);
      if (!cut) pen.dashes = {1.5, 2};
      stroke(view_.place(line.start), view_.place(line.end), pen);
    }
  }

  void draw_pencilled() {
    for (const BoardLine& line : board_.lines) {
      stroke(view_.place(line.start), view_.place(line.end), solid(0.7, line_colour));
    }
  }

  // The guide and the arm, where the board rests, and the rail over each line to cut.
  void draw_cutter(const Placement& placement) {
    const Box& b = view_.board();
    const bool guided = std::any_of(placement.cuts.begin(), placement.cuts.end(),
                                    [](const BevelCut& cut) { return cut.pencil == 0; });
    const double side_x = view_.guide_on_left() ? b.x - bar : b.x + b.width;
    if (guided) page_.fill(paper::rectangle({side_x, b.y - 3, bar, b.height + 3}), {metal});
    page_.fill(paper::rectangle({b.x - bar, b.y + b.height, b.width + 2 * bar, bar}), {metal});
    for (const BevelCut& cut : placement.cuts) {
      const double x = view_.rail_x(cut.distance);
      stroke({x, b.y - 3}, {x, b.y + b.height},
             {.width = 0.6, .colour = metal, .dashes = {5, 2, 1, 2}});
    }
  }

  void draw_cut(const BoardLine& line) {
    const Spot from = view_.place(line.start), to = view_.place(line.end);
    page_.stroke(paper::line({from.x - 4, from.y}, {from.x + 4, from.y}), solid(1.2, now));
    arrow(from, to);
    arrows_.push_back({from, to, {view_.guide_on_left() ? 1.0 : -1.0, 0}, line.number});
  }

  void draw_skew(const SkewCut& cut) {
    const Spot from = view_.place(cut.from), to = view_.place(cut.to);
    arrow(from, to);
    const double length = std::max(1.0, std::hypot(to.x - from.x, to.y - from.y));
    arrows_.push_back(
        {from, to, {(to.y - from.y) / length, -(to.x - from.x) / length}, cut.number});
  }

  // Beside their arrows. One arrow alone needs no number.
  void draw_numbers() {
    if (arrows_.size() < 2) return;
    for (const Arrow& a : arrows_) {
      const std::string text = std::to_string(a.number);
      const paper::TextStyle style{
          .size = type_, .bold = true, .colour = now, .anchor = Anchor::centre};
      const double wide = paper::text_width(text, style);
      const Spot spot = place_beside(a, wide);
      taken_.add(text_box(spot, wide, type_));
      page_.text(text, {spot.x, spot.y + type_ * 0.36}, style);
    }
  }

 private:
  struct Arrow {
    Spot from, to, beside;
    int number;
  };

  Spot place_beside(const Arrow& a, double wide) const {
    constexpr std::array<double, 9> along = {0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9, -0.1, 1.1};
    Spot best{};
    int least = std::numeric_limits<int>::max();
    for (const double away : {wide / 2 + 2.5, wide / 2 + 6}) {
      for (const double side : {1.0, -1.0}) {
        for (const double t : along) {
          const Spot spot{a.from.x + (a.to.x - a.from.x) * t + a.beside.x * side * away,
                          a.from.y + (a.to.y - a.from.y) * t + a.beside.y * side * away};
          const int under = taken_.under(text_box(spot, wide, type_));
          if (under >= least) continue;
          best = spot;
          least = under;
        }
      }
    }
    return best;
  }

  void stroke(Spot a, Spot b, const Pen& pen) {
    taken_.add(a, b);
    page_.stroke(paper::line(a, b), pen);
  }

  void arrow(Spot from, Spot to) {
    taken_.add(from, to);
    const double length = std::max(1.0, std::hypot(to.x - from.x, to.y - from.y));
    const Spot d{(to.x - from.x) / length, (to.y - from.y) / length};
    const double head = std::min(6.0, length);
    const Spot neck{to.x - d.x * head, to.y - d.y * head};
    page_.stroke(paper::line(from, neck), solid(2, now));
    page_.fill(paper::polygon({{neck.x - d.y * 3.2, neck.y + d.x * 3.2},
                               {neck.x + d.y * 3.2, neck.y - d.x * 3.2},
                               to}),
               {now});
  }

  void draw_letters() {
    const Box& b = view_.board();
    const double off = bar + board_.type * 0.62;
    const auto put = [&](BoardEdge edge, Spot at) {
      taken_.add(text_box(at, board_.type, board_.type));
      page_.text(std::string(1, letter(edge)), {at.x, at.y + board_.type * 0.36},
                 {.size = board_.type, .bold = true, .anchor = Anchor::centre});
    };
    const double middle_x = b.x + b.width / 2, middle_y = b.y + b.height / 2;
    const double left = b.x - off, right = b.x + b.width + off;
    put(view_.at_guide(), {view_.guide_on_left() ? left : right, middle_y});
    put(opposite(view_.at_guide()), {view_.guide_on_left() ? right : left, middle_y});
    put(view_.near(), {middle_x, b.y + b.height + off});
    put(opposite(view_.near()), {middle_x, b.y - off});
  }

  void draw_oval(const CurveCut& curve, const Pen& pen) {
    const Spot a = view_.place({curve.back.left, curve.back.top});
    const Spot b = view_.place({curve.back.right, curve.back.bottom});
    page_.stroke(paper::ellipse({std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x),
                                 std::abs(a.y - b.y)}),
                 pen);
  }

  void draw_template(const CurveLine& line, const Pen& pen) {
    constexpr int steps = 12;
    std::vector<Spot> spots{view_.place(line.line.start)};
    Point from = line.line.start;
    for (const Segment& s : line.line.segments) {
      const Cubic curve = s.curved ? Cubic{vector_of(from), vector_of(s.control1),
                                           vector_of(s.control2), vector_of(s.to)}
                                   : line_curve(vector_of(from), vector_of(s.to));
      for (int i = 1; i <= (s.curved ? steps : 1); ++i) {
        const double t = s.curved ? static_cast<double>(i) / steps : 1;
        spots.push_back(view_.place(nearest_point(mullion::place(curve, t))));
      }
      from = s.to;
    }
    page_.stroke(paper::polyline(spots), pen);
  }

  Drawing& page_;
  const BoardPicture& board_;
  BoardView view_;
  double type_;
  Taken taken_;
  std::vector<Arrow> arrows_;
};

}  // namespace

void draw_board_as_it_lies(Drawing& page, const BoardPicture& board, const Placement& placement,
                           const Box& box) {
  Diagram diagram(page, board, placement.edge, box);
  diagram.draw_ground();
  diagram.draw_cutter(placement);
  diagram.draw_lines(placement.cuts.front().number);
  for (const BoardLine& line : lines_of(board.plan, placement)) diagram.draw_cut(line);
  diagram.draw_numbers();
  diagram.draw_openings();
}

void draw_back(Drawing& page, const BoardPicture& board, const Box& box) {
  Diagram diagram(page, board, guide_edge_with_top_up(board.plan), box);
  diagram.draw_ground();
  diagram.draw_pencilled();
  diagram.draw_openings();
}

void draw_curves(Drawing& page, const BoardPicture& board, const Box& box) {
  Diagram diagram(page, board, guide_edge_with_top_up(board.plan), box);
  diagram.draw_ground();
  diagram.draw_lines(std::numeric_limits<int>::max());
  diagram.draw_curves_to_cut();
  diagram.draw_openings();
}

void draw_skew_lines(Drawing& page, const BoardPicture& board, const Box& box) {
  Diagram diagram(page, board, guide_edge_with_top_up(board.plan), box);
  diagram.draw_ground();
  diagram.draw_lines(board.stage.skew_cuts.front().number);
  for (const SkewCut& cut : board.stage.skew_cuts) diagram.draw_skew(cut);
  diagram.draw_numbers();
  diagram.draw_openings();
}

}  // namespace mullion::cutsheet
