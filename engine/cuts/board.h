#pragma once

// How a board lies on the cutter.
//
// The cutter is seen from above by the operator, who stands at its near end. X grows to the right,
// Y away from the operator. The blade enters the board's upper surface on the line X = 0, under
// the rail, and is pulled toward the operator: a cut runs from larger Y to smaller Y. The squaring
// arm's face is Y = 0; the board's near edge rests against it. The guide is parallel to the rail:
// its face is at X = -d where it is on the left, at X = +d on the right, d being its true distance.
// The edge at the guide rests against that face.
//
// The board lies face down, its back up. With no turn its top edge is the far one; being face
// down, the edge that is left as seen from the front is then on the operator's right. On the back
// the edges are lettered clockwise as they are seen there: A top, B left as seen from the front, C
// bottom, D right as seen from the front. A quarter turn clockwise, seen from above, brings the
// near edge to the left, the left one to the far end, and so on.
//
// The blade leans. Its tip comes out of the face by the bevel's run to the side that it points to,
// and the board on that side is kept. With the tip toward the guide, the line of a window that
// bounds the kept board on side E is cut with edge E at the guide; with the tip away from the
// guide, with the edge opposite E.
//
// Points are in the Mat's coordinates: ticks from the upper left corner as seen from the front.

#include "engine/cuts/cutter/profile.h"
#include "engine/layout/layout.h"
#include "engine/mat/outline.h"

namespace mullion {

enum class BoardEdge { top, left, bottom, right };  // A, B, C, D

char letter(BoardEdge edge);
const char* front_name(BoardEdge edge);  // "top", "left", "bottom", "right", as seen from the front
BoardEdge opposite(BoardEdge edge);

// Edges at the four sides of the cutter when `at_guide` rests against the guide.
BoardEdge near_edge(BoardEdge at_guide, GuideSide side);
BoardEdge far_edge(BoardEdge at_guide, GuideSide side);

// Clockwise quarter turns, 0 to 3, that bring the board from one edge at the guide to another.
int quarter_turns(BoardEdge from, BoardEdge to);

BoardEdge edge_at_guide(BoardEdge kept, BladeLean lean);

// Whether a slanting line is cut in the order of its outline, which has the kept board to its left
// as seen from the front.
bool cut_as_outlined(const CutterProfile& cutter);

// Distance of a point from an edge of the board.
Length distance_from(BoardEdge edge, const Point& point, const Rect& board);

// The point at these distances from two edges that meet.
Point point_at(BoardEdge edge, Length distance, BoardEdge other, Length other_distance,
               const Rect& board);

}  // namespace mullion
