#include "render/cutsheet/board_view.h"

#include <algorithm>

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

}  // namespace mullion::cutsheet
