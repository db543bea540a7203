#include "render/cutsheet/board_diagram.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "render/cutsheet/look.h"
#include "render/cutsheet/taken.h"

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
    const Box& b = view_.board();
    taken_.add({{b.x, b.y},
                {b.x + b.width, b.y},
                {b.x + b.width, b.y + b.height},
                {b.x, b.y + b.height},
                {b.x, b.y}});
    draw_letters();
    draw_curves({.width = 0.6, .colour = line_colour, .dashes = {1.5, 2}});
  }

  // Once all lines are there: each where it touches nothing, as near the opening's middle as can
  // be; none where an opening is too small for it.
  void draw_openings() {
    for (const OpeningMark& mark : board_.openings) {
      const double wide = paper::text_width(mark.number, {.size = type_});
      const std::optional<Spot> spot = place_within(mark.box, wide);
      if (!spot) continue;
      taken_.add(text_box(*spot, wide, type_));
      page_.text(mark.number, {spot->x, spot->y + type_ * 0.36},
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
    if (guided) fill({side_x, b.y - 3, bar, b.height + 3});
    fill({b.x - bar, b.y + b.height, b.width + 2 * bar, bar});
    for (const BevelCut& cut : placement.cuts) {
      const double x = view_.rail_x(cut.distance);
      stroke({x, b.y - 3}, {x, b.y + b.height},
             {.width = 0.6, .colour = metal, .dashes = {5, 2, 1, 2}});
    }
  }

  void draw_cut(const BoardLine& line) {
    const Spot from = view_.place(line.start), to = view_.place(line.end);
    stroke({from.x - 4, from.y}, {from.x + 4, from.y}, solid(1.2, now));
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

  // Beside their arrows, where they touch nothing and stand nearest to their own; none where there
  // is no such place. One arrow alone needs no number.
  void draw_numbers() {
    if (arrows_.size() < 2) return;
    for (const Arrow& a : arrows_) {
      const std::string text = std::to_string(a.number);
      const paper::TextStyle style{
          .size = type_, .bold = true, .colour = now, .anchor = Anchor::centre};
      const double wide = paper::text_width(text, style);
      std::optional<Spot> spot = place_beside(a, wide);
      if (!spot) spot = place_above(a, wide);
      if (!spot) continue;
      taken_.add(text_box(*spot, wide, type_));
      page_.text(text, {spot->x, spot->y + type_ * 0.36}, style);
    }
  }

 private:
  struct Arrow {
    Spot from, to, beside;
    int number;
  };

  // In rings around the middle.
  std::optional<Spot> place_within(const Rect& opening, double wide) const {
    const Spot a = view_.place({opening.left, opening.top});
    const Spot b = view_.place({opening.right, opening.bottom});
    const Spot middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    const double across = std::abs(a.x - b.x) / 2, along = std::abs(a.y - b.y) / 2;
    const double step = type_ * 0.3;
    const int rings = static_cast<int>(std::max(across, along) / step);
    for (int ring = 0; ring <= rings; ++ring) {
      for (int down = -ring; down <= ring; ++down) {
        for (int right = -ring; right <= ring; ++right) {
          if (std::max(std::abs(down), std::abs(right)) != ring) continue;
          const Spot at{middle.x + right * step, middle.y + down * step};
          const bool within =
              std::abs(at.x - middle.x) < across && std::abs(at.y - middle.y) < along;
          if (within && taken_.is_free(text_box(at, wide, type_))) return at;
        }
      }
    }
    return std::nullopt;
  }

  std::optional<Spot> place_beside(const Arrow& a, double wide) const {
    constexpr std::array<double, 19> along = {0.5, 0.45, 0.55, 0.4,   0.6, 0.35, 0.65,
                                              0.3, 0.7,  0.25, 0.75,  0.2, 0.8,  0.1,
                                              0.9, 0.0,  1.0,  -0.15, 1.15};
    for (double more = 2.5; more < 13; more += 1) {
      for (const double side : {1.0, -1.0}) {
        for (const double t : along) {
          const double away = wide / 2 + more;
          const Spot spot{a.from.x + (a.to.x - a.from.x) * t + a.beside.x * side * away,
                          a.from.y + (a.to.y - a.from.y) * t + a.beside.y * side * away};
          if (is_nearest(spot, a) && taken_.is_free(text_box(spot, wide, type_))) return spot;
        }
      }
    }
    return std::nullopt;
  }

  // Where the line to cut leaves the board, if no other arrow lies on it.
  std::optional<Spot> place_above(const Arrow& arrow, double wide) const {
    const bool alone = std::all_of(arrows_.begin(), arrows_.end(), [&](const Arrow& other) {
      return &other == &arrow || std::abs(other.from.x - arrow.from.x) > wide / 2;
    });
    const Spot spot{arrow.from.x, view_.board().y - 3.5 - type_ * 0.5};
    const bool upright = std::abs(arrow.from.x - arrow.to.x) < 0.01;
    if (!alone || !upright || !taken_.is_free(text_box(spot, wide, type_))) return std::nullopt;
    return spot;
  }

  bool is_nearest(Spot spot, const Arrow& arrow) const {
    const double own = distance_between(spot, arrow.from, arrow.to);
    return std::all_of(arrows_.begin(), arrows_.end(), [&](const Arrow& other) {
      return &other == &arrow || distance_between(spot, other.from, other.to) > own * 1.15;
    });
  }

  void stroke(Spot a, Spot b, const Pen& pen) {
    taken_.add(a, b);
    page_.stroke(paper::line(a, b), pen);
  }

  void arrow(Spot from, Spot to) {
    taken_.add(from, to);
    const double length = std::max(1.0, std::hypot(to.x - from.x, to.y - from.y));
    const Spot d{(to.x - from.x) / length, (to.y - from.y) / length};
    const double head = std::min(6.0, length / 2), half = head * 0.53;
    const Spot neck{to.x - d.x * head, to.y - d.y * head};
    page_.stroke(paper::line(from, neck), solid(2, now));
    const std::vector<Spot> point{
        {neck.x - d.y * half, neck.y + d.x * half}, {neck.x + d.y * half, neck.y - d.x * half}, to};
    page_.fill(paper::polygon(point), {now});
    taken_.add(point);
    taken_.add(to, point.front());
  }

  void fill(const Box& box) {
    page_.fill(paper::rectangle(box), {metal});
    taken_.add(box);
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
    const Box box{std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
    page_.stroke(paper::ellipse(box), pen);
    constexpr int chords = 24;
    std::vector<Spot> way;
    for (int i = 0; i <= chords; ++i) {
      const double angle = 2 * std::numbers::pi * i / chords;
      way.push_back({box.x + box.width * (1 + std::cos(angle)) / 2,
                     box.y + box.height * (1 + std::sin(angle)) / 2});
    }
    taken_.add(way);
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
    taken_.add(spots);
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
