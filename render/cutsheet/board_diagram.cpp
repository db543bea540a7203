#include "render/cutsheet/board_diagram.h"

#include <algorithm>

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Canvas;
using paper::Spot;

constexpr Colour board_colour{0xf1, 0xef, 0xe8};
constexpr Colour metal{0x55, 0x5b, 0x60};
constexpr Colour cut_grey{0x80, 0x80, 0x80};
constexpr Colour now{0xc0, 0x20, 0x10};

class Diagram {
 public:
  Diagram(Canvas& canvas, const DiagramView& view, const Box& box)
      : canvas_(canvas), view_(view), edge_(view.placement.edge) {
    side_ = view.plan.cutter.side;
    near_ = near_edge(edge_, side_);
    const Rect& board = view.plan.outer;
    const bool upright = near_ == BoardEdge::top || near_ == BoardEdge::bottom;
    across_ = paper::points(upright ? board.width() : board.height());
    along_ = paper::points(upright ? board.height() : board.width());
    constexpr double furniture = 11;  // guide, arm and letters around the board
    const double room_x = box.width - 2 * furniture, room_y = box.height - 2 * furniture;
    scale_ = std::min(room_x / across_, room_y / along_);
    origin_ = {box.x + (box.width - across_ * scale_) / 2,
               box.y + (box.height - along_ * scale_) / 2};
  }

  void draw() {
    canvas_.fill(board_box(), {board_colour});
    canvas_.rectangle(board_box(), {.width = 0.8, .dashes = {}});
    draw_furniture();
    draw_letters();
    for (const BoardLine& line : view_.all) {
      const bool cut = line.number < first_number();
      canvas_.line(place(line.start), place(line.end),
                   {.width = 0.7,
                    .colour = cut_grey,
                    .dashes = cut ? std::vector<double>{} : std::vector<double>{1.5, 2}});
    }
    for (const BoardLine& line : lines_of(view_.plan, view_.placement)) draw_cut(line);
  }

 private:
  Box board_box() const { return {origin_.x, origin_.y, across_ * scale_, along_ * scale_}; }
  int first_number() const { return view_.placement.cuts.front().number; }
  bool on_left() const { return side_ == GuideSide::left; }

  Spot place(const Point& point) const {
    const double guide = paper::points(distance_from(edge_, point, view_.plan.outer));
    const double near = paper::points(distance_from(near_, point, view_.plan.outer));
    return {origin_.x + (on_left() ? guide : across_ - guide) * scale_,
            origin_.y + (along_ - near) * scale_};
  }

  // The rail runs over the line to cut; the guide and the arm are where the board rests.
  void draw_furniture() {
    const Box b = board_box();
    constexpr double bar = 4;
    const Settings& settings = view_.set_up.settings;
    const bool guided = settings.guide.has_value();
    const double side_x = on_left() ? b.x - bar : b.x + b.width;
    if (guided) canvas_.fill({side_x, b.y - 3, bar, b.height + 3}, {metal});
    canvas_.fill({b.x - bar, b.y + b.height, b.width + 2 * bar, bar}, {metal});
    for (const BevelCut& cut : view_.placement.cuts) {
      const double d = paper::points(cut.distance) * scale_;
      const double x = on_left() ? b.x + d : b.x + b.width - d;
      canvas_.line({x, b.y - 9}, {x, b.y + b.height + 4},
                   {.width = 0.6, .colour = metal, .dashes = {5, 2, 1, 2}});
    }
  }

  void draw_letters() {
    const Box b = board_box();
    const paper::TextStyle style{.size = 8.5, .bold = true, .anchor = paper::Anchor::centre};
    const auto put = [&](BoardEdge edge, Spot at) {
      canvas_.text(std::string(1, letter(edge)), at, style);
    };
    const double inset = 7;
    const double middle_y = b.y + b.height / 2 + 3;
    const double guide_x = on_left() ? b.x + inset : b.x + b.width - inset;
    const double other_x = on_left() ? b.x + b.width - inset : b.x + inset;
    put(edge_, {guide_x, middle_y});
    put(opposite(edge_), {other_x, middle_y});
    put(near_, {b.x + b.width / 2, b.y + b.height - 3});
    put(opposite(near_), {b.x + b.width / 2, b.y + 9});
  }

  void draw_cut(const BoardLine& line) {
    const Spot from = place(line.start), to = place(line.end);
    canvas_.line(from, {to.x, to.y - 3}, {.width = 2, .colour = now, .dashes = {}});
    canvas_.fill({{to.x - 3.2, to.y - 6}, {to.x + 3.2, to.y - 6}, to}, {now});
    canvas_.line({from.x - 4, from.y}, {from.x + 4, from.y}, {.width = 1.2, .colour = now, .dashes = {}});
    const bool label_right = on_left();
    canvas_.text(std::to_string(line.number),
                 {from.x + (label_right ? 4 : -4), (from.y + to.y) / 2 - 5},
                 {.size = 8.5,
                  .bold = true,
                  .colour = now,
                  .anchor = label_right ? paper::Anchor::left : paper::Anchor::right});
  }

  Canvas& canvas_;
  const DiagramView& view_;
  BoardEdge edge_, near_ = BoardEdge::top;
  GuideSide side_ = GuideSide::left;
  double across_ = 1, along_ = 1, scale_ = 1;
  Spot origin_;
};

}  // namespace

std::vector<BoardLine> lines_of(const CuttingPlan& plan, const Placement& placement) {
  std::vector<BoardLine> out;
  const BoardEdge near = near_edge(placement.edge, plan.cutter.side);
  for (const BevelCut& cut : placement.cuts) {
    out.push_back({point_at(placement.edge, cut.distance, near, cut.start.line, plan.outer),
                   point_at(placement.edge, cut.distance, near, cut.end.line, plan.outer),
                   cut.number});
  }
  return out;
}

void draw_board_as_it_lies(Canvas& canvas, const DiagramView& view, const Box& box) {
  Diagram(canvas, view, box).draw();
}

}  // namespace mullion::cutsheet
