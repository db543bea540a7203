#include "render/bench/board_svg.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/placement_words.h"
#include "render/proof/markup.h"

namespace mullion::bench {
namespace {

using cutsheet::BoardLine;
using cutsheet::BoardView;
using cutsheet::guide_edge_with_top_up;
using cutsheet::lying_heading;
using paper::Box;
using paper::Spot;

// In units of the picture: its longer side, what is left free around the board, how wide guide and
// arm are, and a block at them, the size of letters and numbers, and the arrow's head.
constexpr double side = 1000, room = 104, bar = 14, block = 24, type = 58, head = 44,
                 half_head = 24;
constexpr double stop_width = 70, stop_depth = 26;
constexpr int every_cut = std::numeric_limits<int>::max();

std::string whole(double value) {
  return std::to_string(std::lround(value));
}

std::string spot_text(Spot spot) {
  return whole(spot.x) + " " + whole(spot.y);
}

// From one place to another, as short as path data allow (SVG 1.1, 8.3.4).
std::string line_data(Spot a, Spot b) {
  const std::string from = "M" + spot_text(a);
  if (std::lround(a.x) == std::lround(b.x)) return from + "V" + whole(b.y);
  if (std::lround(a.y) == std::lround(b.y)) return from + "H" + whole(b.x);
  return from + "L" + spot_text(b);
}

std::string box_data(const Box& box) {
  return "M" + spot_text({box.x, box.y}) + "H" + whole(box.x + box.width) + "V" +
         whole(box.y + box.height) + "H" + whole(box.x) + "z";
}

class Painter {
 public:
  // With all lines to come, the numbers and the letters: so far alike for a stage as it lies.
  Painter(const BoardPicture& board, BoardEdge at_guide)
      : board_(board),
        view_(board.plan.outer, at_guide, board.plan.cutter.side, {0, 0, side, side}, room) {
    out_.under = path("board", box_data(view_.board()));
    std::string uncut;
    for (const BoardLine& line : board.lines) uncut += data_of(line);
    for (const CurveCut& curve : board.stage.curves) uncut += curve_data(curve);
    out_.under += path("uncut", uncut);
    for (const cutsheet::OpeningMark& mark : board.openings) {
      out_.over += text("opening", mark.number, view_.place(mark.middle));
    }
    letters();
  }
  explicit Painter(const BoardPicture& board)
      : Painter(board, guide_edge_with_top_up(board.plan)) {}

  // Where the board rests: at guide and arm, or at blocks there, whose width is not to scale.
  void cutter(const Settings& settings) {
    const Box& b = view_.board();
    const double bottom = b.y + b.height;
    const double below = settings.arm_block ? block : 0;
    if (settings.guide) {
      const bool inside = settings.block && !settings.block->outside;
      const double away = inside ? block : 0;
      if (settings.block) out_.between += path("block", at_side(inside ? 0 : bar, block));
      out_.between += path("metal", at_side(away, bar));
    }
    if (settings.arm_block) out_.between += path("block", box_data({b.x, bottom, b.width, block}));
    out_.between += path("metal", box_data({b.x - bar, bottom + below, b.width + 2 * bar, bar}));
  }

  // Of a lower number.
  void cut_lines(int first_number) {
    std::string cut;
    for (const BoardLine& line : board_.lines) {
      if (line.number < first_number) cut += data_of(line);
    }
    out_.between += path("cut", cut);
  }

  void cut_curves(std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
      out_.between += path("cut", curve_data(board_.stage.curves[i]));
    }
  }

  void curve(const CurveCut& curve) { out_.now += path("now", curve_data(curve)); }

  // The opening that is cut into.
  void number(const std::vector<int>& openings) {
    std::string number;
    for (const int opening : openings) {
      number += (number.empty() ? "" : ",") + std::to_string(opening);
    }
    for (const cutsheet::OpeningMark& mark : board_.openings) {
      if (mark.number != number) continue;
      out_.now += text("opening this", number, view_.place(mark.middle));
    }
  }

  void rail(Length distance) {
    const double x = view_.rail_x(distance);
    const Box& b = view_.board();
    out_.between += path("rail", line_data({x, b.y - room / 2}, {x, b.y + b.height + bar}));
  }

  void stroke(BoardEdge edge, Length distance) {
    const Rect& outer = board_.plan.outer;
    const bool level = edge == BoardEdge::top || edge == BoardEdge::bottom;
    const BoardEdge one = level ? BoardEdge::left : BoardEdge::top;
    const auto end = [&](Length along) {
      return view_.place(point_at(edge, distance, one, along, outer));
    };
    out_.between +=
        path("now", line_data(end(Length()), end(level ? outer.width() : outer.height())));
  }

  void line(const BoardLine& line) { out_.between += path("now", data_of(line)); }

  void arrow(const Point& start, const Point& finish) {
    const Spot from = view_.place(start), to = view_.place(finish);
    const double length = std::max(1.0, std::hypot(to.x - from.x, to.y - from.y));
    const Spot d{(to.x - from.x) / length, (to.y - from.y) / length};
    const double tip = std::min(head, length * 0.6);
    const Spot neck{to.x - d.x * tip, to.y - d.y * tip};
    out_.now += path("now", line_data(from, neck));
    const double half = half_head * tip / head;
    out_.now += path("tip", "M" + spot_text(to) + "L" +
                                spot_text({neck.x - d.y * half, neck.y + d.x * half}) + "L" +
                                spot_text({neck.x + d.y * half, neck.y - d.x * half}) + "z");
    out_.now += path("start", line_data({from.x + d.y * half_head, from.y - d.x * half_head},
                                        {from.x - d.y * half_head, from.y + d.x * half_head}));
  }

  // Where the head's mark comes to stand, and the stop beyond it.
  void stops(const BevelCut& cut, const Settings& settings) {
    const Length arm = settings.arm_block.value_or(Length());
    const auto stop = [&](Length place, double beyond) {
      const Spot at = view_.place(
          point_at(view_.at_guide(), cut.distance, view_.near(), place - arm, board_.plan.outer));
      out_.now += path("stop", box_data({at.x - stop_width / 2, std::min(at.y, at.y + beyond),
                                         stop_width, std::abs(beyond)}));
    };
    if (settings.near_stop) stop(*settings.near_stop, stop_depth);
    if (settings.far_stop) stop(*settings.far_stop, -stop_depth);
  }

  Picture take(const std::string& label) {
    const Box b = paper::grown(view_.board(), room);
    out_.box = spot_text({b.x, b.y}) + " " + spot_text({b.width, b.height});
    out_.label = label;
    return std::move(out_);
  }

 private:
  // Along the board, on the guide's side.
  std::string at_side(double away, double width) const {
    const Box& b = view_.board();
    return box_data(
        {view_.guide_on_left() ? b.x - away - width : b.x + b.width + away, b.y, width, b.height});
  }

  static std::string path(const char* name, const std::string& data) {
    return data.empty() ? "" : std::string("<path class=\"") + name + "\" d=\"" + data + "\"/>";
  }

  static std::string text(const char* name, const std::string& content, Spot middle) {
    constexpr double below = type * 0.36;  // the middle of a capital, to its base line
    return std::string("<text class=\"") + name + "\" x=\"" + whole(middle.x) + "\" y=\"" +
           whole(middle.y + below) + "\">" + proof::escaped(content) + "</text>";
  }

  std::string data_of(const BoardLine& line) const {
    return line_data(view_.place(line.start), view_.place(line.end));
  }

  void letters() {
    const Box& b = view_.board();
    const double off = (bar + block + room) / 2;
    const auto put = [&](BoardEdge edge, Spot at) {
      out_.over += text("edge", std::string(1, letter(edge)), at);
    };
    const Spot middle{b.x + b.width / 2, b.y + b.height / 2};
    const double left = b.x - off, right = b.x + b.width + off;
    put(view_.at_guide(), {view_.guide_on_left() ? left : right, middle.y});
    put(opposite(view_.at_guide()), {view_.guide_on_left() ? right : left, middle.y});
    put(view_.near(), {middle.x, b.y + b.height + off});
    put(opposite(view_.near()), {middle.x, b.y - off});
  }

  std::string curve_data(const CurveCut& curve) const {
    if (curve.kind == CurveKind::oval) {
      const Spot a = view_.place({curve.back.left, curve.back.top});
      const Spot b = view_.place({curve.back.right, curve.back.bottom});
      const double y = (a.y + b.y) / 2;
      const std::string arc =
          "A" + spot_text({std::abs(a.x - b.x) / 2, std::abs(a.y - b.y) / 2}) + " 0 0 1 ";
      return "M" + spot_text({a.x, y}) + arc + spot_text({b.x, y}) + arc + spot_text({a.x, y}) +
             "z";
    }
    std::string out;
    for (const CurveLine& line : curve.lines) {
      out += "M" + spot_text(view_.place(line.line.start));
      for (const Segment& s : line.line.segments) {
        if (s.curved) {
          out += "C" + spot_text(view_.place(s.control1)) + " " +
                 spot_text(view_.place(s.control2)) + " " + spot_text(view_.place(s.to));
        } else {
          out += "L" + spot_text(view_.place(s.to));
        }
      }
    }
    return out;
  }

  const BoardPicture& board_;
  BoardView view_;
  Picture out_;
};

std::string top_away(const BoardPicture& board) {
  return board.plan.locale.say("lay edge %1 away from you", std::string(1, letter(BoardEdge::top)));
}

BoardLine line_of_cut(const BoardPicture& board, const Placement& placement, const BevelCut& cut) {
  return cutsheet::lines_of(board.plan, {placement.edge, placement.laid, placement.turns, {cut}})
      .front();
}

}  // namespace

Picture picture_of_cut(const BoardPicture& board, const Placement& placement, const BevelCut& cut,
                       const Settings& settings) {
  Painter painter(board, placement.edge);
  painter.cutter(settings);
  painter.cut_lines(cut.number);
  painter.rail(cut.distance);
  painter.number(cut.openings);
  const BoardLine line = line_of_cut(board, placement, cut);
  painter.arrow(line.start, line.end);
  painter.stops(cut, settings);
  return painter.take(lying_heading(board.plan, placement));
}

Picture picture_after_cut(const BoardPicture& board, const Placement& placement,
                          const BevelCut& cut, const Settings& settings) {
  Painter painter(board, placement.edge);
  painter.cutter(settings);
  painter.cut_lines(cut.number + 1);
  painter.number(cut.openings);
  painter.line(line_of_cut(board, placement, cut));
  return painter.take(lying_heading(board.plan, placement));
}

Picture picture_of_stroke(const BoardPicture& board, const MarkPlacement& placement,
                          const Settings& settings) {
  Painter painter(board, placement.edge);
  painter.cutter(settings);
  const PencilLine& line = board.stage.pencil_lines[static_cast<std::size_t>(placement.line) - 1];
  painter.stroke(line.edge, line.distance);
  return painter.take(lying_heading(board.plan, {placement.edge, false, 0, {BevelCut()}}));
}

Picture picture_of_lines(const BoardPicture& board, const std::vector<int>& lines) {
  Painter painter(board);
  for (const int number : lines) {
    const PencilLine& line = board.stage.pencil_lines[static_cast<std::size_t>(number) - 1];
    painter.stroke(line.edge, line.distance);
  }
  return painter.take(top_away(board));
}

Picture picture_of_skew_cut(const BoardPicture& board, const SkewCut& cut) {
  Painter painter(board);
  painter.cut_lines(cut.number);
  painter.number(cut.openings);
  painter.arrow(cut.from, cut.to);
  return painter.take(top_away(board));
}

Picture picture_of_curve(const BoardPicture& board, std::size_t curve) {
  Painter painter(board);
  painter.cut_lines(every_cut);
  painter.cut_curves(curve);
  painter.number(board.stage.curves[curve].openings);
  painter.curve(board.stage.curves[curve]);
  return painter.take(top_away(board));
}

Picture picture_of_all(const BoardPicture& board) {
  Painter painter(board);
  painter.cut_lines(every_cut);
  painter.cut_curves(board.stage.curves.size());
  return painter.take(top_away(board));
}

}  // namespace mullion::bench
