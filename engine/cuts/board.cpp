#include "engine/cuts/board.h"

#include "engine/locale/locale.h"

namespace mullion {
namespace {

BoardEdge clockwise_by(BoardEdge edge, int steps) {
  return static_cast<BoardEdge>((static_cast<int>(edge) + steps + 4) % 4);
}

}  // namespace

char letter(BoardEdge edge) {
  return static_cast<char>('A' + static_cast<int>(edge));
}

const char* front_name(BoardEdge edge) {
  constexpr const char* names[] = {mark("top"), mark("left"), mark("bottom"), mark("right")};
  return names[static_cast<int>(edge)];
}

BoardEdge opposite(BoardEdge edge) {
  return clockwise_by(edge, 2);
}

BoardEdge far_edge(BoardEdge at_guide, GuideSide side) {
  return clockwise_by(at_guide, side == GuideSide::left ? 1 : -1);
}

BoardEdge near_edge(BoardEdge at_guide, GuideSide side) {
  return opposite(far_edge(at_guide, side));
}

int quarter_turns(BoardEdge from, BoardEdge to) {
  return (static_cast<int>(from) - static_cast<int>(to) + 4) % 4;
}

BoardEdge edge_at_guide(BoardEdge kept, BladeLean lean) {
  return lean == BladeLean::to_guide ? kept : opposite(kept);
}

// Face down and pulled toward the operator, the table's left is the front's.
bool cut_as_outlined(const CutterProfile& cutter) {
  const bool tip_left = (cutter.side == GuideSide::left) == (cutter.lean == BladeLean::to_guide);
  return tip_left == (cutter.stroke == Stroke::pull);
}

Length distance_from(BoardEdge edge, const Point& point, const Rect& board) {
  switch (edge) {
    case BoardEdge::top:
      return point.y - board.top;
    case BoardEdge::left:
      return point.x - board.left;
    case BoardEdge::bottom:
      return board.bottom - point.y;
    case BoardEdge::right:
      return board.right - point.x;
  }
  return Length();
}

Point point_at(BoardEdge edge, Length distance, BoardEdge other, Length other_distance,
               const Rect& board) {
  Point point{board.left, board.top};
  const auto put = [&](BoardEdge from, Length by) {
    if (from == BoardEdge::top) point.y = board.top + by;
    if (from == BoardEdge::bottom) point.y = board.bottom - by;
    if (from == BoardEdge::left) point.x = board.left + by;
    if (from == BoardEdge::right) point.x = board.right - by;
  };
  put(edge, distance);
  put(other, other_distance);
  return point;
}

}  // namespace mullion
