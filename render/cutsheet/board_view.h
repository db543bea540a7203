#pragma once

// How the board lies on the cutter, face down, seen by the operator, whatever draws it: where its
// points are in a picture, the lines of its cuts, and where its openings are numbered.

#include <string>
#include <vector>

#include "engine/cuts/sheet/told.h"
#include "render/paper/path.h"

namespace mullion::cutsheet {

// A cut's line on the board, in the Mat's coordinates.
struct BoardLine {
  Point start, end;
  int number = 0;
};

// An opening's number, and the room to write it in.
struct OpeningMark {
  Point middle;
  Rect box;
  std::string number;
};

// What the diagrams of a stage have in common. Refers to the plan and the stage.
struct BoardPicture {
  const ToldPlan& plan;
  const Stage& stage;
  double type = 8.5;  // size of letters and numbers, in points
  std::vector<BoardLine> lines;
  std::vector<OpeningMark> openings;  // none for a single opening
};

BoardPicture board_picture(const ToldPlan& plan, const Stage& stage, double type);

// Of the placement's cuts, in their order.
std::vector<BoardLine> lines_of(const CuttingPlan& plan, const Placement& placement);

// With which the top edge is away from the operator.
BoardEdge guide_edge_with_top_up(const CuttingPlan& plan);

// Where a point of the board is in a diagram: the board as the operator sees it, face down.
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
