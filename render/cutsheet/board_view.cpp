#include "render/cutsheet/board_view.h"

#include <algorithm>
#include <map>

namespace mullion::cutsheet {

BoardView::BoardView(const Rect& board, BoardEdge at_guide, GuideSide side, const paper::Box& box,
                     double room)
    : rect_(board), edge_(at_guide), near_(near_edge(at_guide, side)), side_(side) {
  const bool upright = near_ == BoardEdge::top || near_ == BoardEdge::bottom;
  const double across = paper::points(upright ? board.width() : board.height());
  const double along = paper::points(upright ? board.height() : board.width());
  scale_ = std::min((box.width - 2 * room) / across, (box.height - 2 * room) / along);
  box_ = {box.x + (box.width - across * scale_) / 2, box.y + (box.height - along * scale_) / 2,
          across * scale_, along * scale_};
}

double BoardView::rail_x(Length distance) const {
  const double d = paper::points(distance) * scale_;
  return guide_on_left() ? box_.x + d : box_.x + box_.width - d;
}

paper::Spot BoardView::place(const Point& point) const {
  const double near = paper::points(distance_from(near_, point, rect_));
  return {rail_x(distance_from(edge_, point, rect_)), box_.y + box_.height - near * scale_};
}

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

namespace {

// The least rectangle around the points that belong to the same openings.
class OpeningBoxes {
 public:
  void add(const std::vector<int>& openings, const Point& p) {
    const auto [at, is_new] = boxes_.emplace(openings, Rect{p.x, p.y, p.x, p.y});
    if (is_new) return;
    Rect& box = at->second;
    box = {std::min(box.left, p.x), std::min(box.top, p.y), std::max(box.right, p.x),
           std::max(box.bottom, p.y)};
  }
  std::vector<OpeningMark> marks() const {
    std::vector<OpeningMark> out;
    if (boxes_.size() < 2) return out;
    for (const auto& [openings, box] : boxes_) {
      std::string number;
      for (const int opening : openings) {
        number += (number.empty() ? "" : ",") + std::to_string(opening);
      }
      out.push_back(
          {{half_rounded_down(box.left + box.right), half_rounded_down(box.top + box.bottom)},
           box,
           number});
    }
    return out;
  }

 private:
  std::map<std::vector<int>, Rect> boxes_;
};

}  // namespace

BoardEdge guide_edge_with_top_up(const CuttingPlan& plan) {
  return plan.cutter.side == GuideSide::left ? BoardEdge::right : BoardEdge::left;
}

BoardPicture board_picture(const ToldPlan& plan, const Stage& stage, double type) {
  BoardPicture out{plan, stage, type, {}, {}};
  OpeningBoxes boxes;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      const std::vector<BoardLine> lines = lines_of(plan, placement);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        boxes.add(placement.cuts[i].openings, lines[i].start);
        boxes.add(placement.cuts[i].openings, lines[i].end);
        out.lines.push_back(lines[i]);
      }
    }
  }
  for (const SkewCut& cut : stage.skew_cuts) {
    boxes.add(cut.openings, cut.from);
    boxes.add(cut.openings, cut.to);
    out.lines.push_back({cut.from, cut.to, cut.number});
  }
  for (const CurveCut& curve : stage.curves) {
    boxes.add(curve.openings, {curve.back.left, curve.back.top});
    boxes.add(curve.openings, {curve.back.right, curve.back.bottom});
  }
  out.openings = boxes.marks();
  return out;
}

}  // namespace mullion::cutsheet
