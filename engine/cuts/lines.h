#pragma once

// The lines of windows as a blade cuts them: the straight ones, the slanting ones, and the curves.
//
// Points are those of engine/cuts/board.h: exact ticks, seen from the front. Every line is told
// with its over-cuts, from the over-cut of a square corner, which the cutter's profile has. Every
// outline is taken; what the cutter cannot do with its lines is said in engine/cuts/cuts.h.
//
// Over-cuts. The bevels of two cuts that turn by an angle meet on the face at the tangent of half
// that angle times the run: all of a square corner's over-cut at 90 degrees, 29/70 of it (just
// above tan 22.5 degrees) where two straight lines turn by 45, rounded up. None where the mat's
// board stands into the window, or where a line goes on smoothly.
//
// A drawn outline's straight sides are lines like those of any other shape where they are at least
// `least_straight_side` long; shorter ones belong to the curve.

#include <vector>

#include "engine/cuts/board.h"
#include "engine/mat/mat.h"

namespace mullion {

struct LineEnd {
  Point at;
  Length over_cut;     // of the blade, past the place
  int neighbour = -1;  // index of the line that meets it here; -1: none that is parallel to an edge
};

// Parallel to the board's edges, on the back; `kept` is the side on which the board is kept.
struct StraightLine {
  int window = 0;  // index among the windows
  BoardEdge kept = BoardEdge::top;
  LineEnd ends[2];  // in the order of the outline
};

// A straight line at another angle, in the order of the outline: the kept board is to its left as
// seen from the front.
struct SkewLine {
  int window = 0;
  Point from, to;
  Length from_over_cut, to_over_cut;
};

enum class CurveKind { oval, template_cut };

// A line on the back that is cut along a template, clockwise as seen from the front.
struct CurveLine {
  bool closed = false;
  Outline line;                   // open: from its start to the end of its last segment
  std::vector<Length> over_cuts;  // at the start, then after each segment: both parts run on by it
};

struct Curve {
  int window = 0;
  CurveKind kind = CurveKind::template_cut;
  std::vector<CurveLine> lines;  // an oval: its whole edge
};

struct CutLines {
  std::vector<StraightLine> straight;
  std::vector<SkewLine> skew;
  std::vector<Curve> curves;
};

// A board cannot be lined up well by a shorter line. Our own figure.
inline constexpr Length least_straight_side = sixty_fourths(32);

// Ellipses are ovals; the curves of other shapes are template cuts and their straight parts are
// lines. `over_cut` is that of a square corner.
CutLines lines_of(const std::vector<Window>& windows, Length over_cut);

// From `other` on through `end`, farther by `by`; the two differ in one coordinate.
Point beyond(Point end, Point other, Length by);

// How far the blade goes along a straight line, over-cuts included.
Length cut_length(const StraightLine& line);
Length cut_length(const SkewLine& line);  // rounded up

// A line with its over-cuts, as it is drawn for a hand or a machine to follow; open or closed.
struct BladePath {
  bool closed = false;
  Outline line;
};

// Every line once. Where a curve has a corner, both of its parts run on straight: lines of their
// own. Ends of slanting lines and of what runs on from a curve are rounded to whole ticks.
std::vector<BladePath> blade_paths(const CutLines& lines);

// How far the outline strays at most from the ellipse in its bounding box, rounded up.
Length distance_from_ellipse(const Outline& outline);

}  // namespace mullion
