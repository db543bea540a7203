#pragma once

// Where a point of the board is in a diagram: the board as the operator sees it, face down.

#include "engine/cuts/plan/plan.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {

class BoardView {
 public:
  // `at_guide` on the guide's side of the picture. `room` is left free on all sides of the board.
  BoardView(const Rect& board, BoardEdge at_guide, GuideSide side, const paper::Box& box,
            double room);

  paper::Spot place(const Point& point) const;
  // Of a line parallel to the guide.
  double rail_x(Length distance) const;
  const paper::Box& board() const { return box_; }
  bool guide_on_left() const { return side_ == GuideSide::left; }
  BoardEdge at_guide() const { return edge_; }
  BoardEdge near() const { return near_; }

 private:
  Rect rect_;
  BoardEdge edge_, near_;
  GuideSide side_;
  double scale_ = 1;
  paper::Box box_;
};

}  // namespace mullion::cutsheet
