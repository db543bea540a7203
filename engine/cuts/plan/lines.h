#pragma once

// The straight lines of a layer's windows, and what of them is not straight.
//
// Points are those of engine/cuts/plan/board.h: exact ticks, seen from the front. Over-cuts are
// told as parts of a square corner's, whose length the cutter's profile has. Every outline is
// taken; what the cutter cannot do with its lines is said where they are planned.

#include <vector>

#include "engine/cuts/plan/board.h"
#include "engine/mat/mat.h"

namespace mullion {

// How a line meets the next one of its window.
enum class Corner {
  square,  // 90 degrees: the blade goes past it by the over-cut
  blunt,   // 135 degrees: by a part of it
  inner,   // the mat's board stands into the window here: no over-cut is needed
  curve,   // a curve follows at an angle: by a part of it
  smooth,  // a curve follows: none
};

struct LineEnd {
  Point at;
  Corner corner = Corner::square;
  int neighbour = -1;  // index of the line that meets it here; -1: none that is parallel to an edge
  int share = 0;       // Corner::curve: thousandths of the over-cut
};

// Parallel to the board's edges, on the back; `kept` is the side on which the board is kept.
struct StraightLine {
  int window = 0;  // index in the layer
  BoardEdge kept = BoardEdge::top;
  LineEnd ends[2];  // in the order of the outline
};

// A straight line at another angle, in the order of the outline: the kept board is to its left as
// seen from the front.
struct SkewLine {
  int window = 0;
  Point from, to;
};

enum class CurveKind { oval, template_cut };

// A line on the back that is cut along a template, clockwise as seen from the front.
struct CurveLine {
  bool closed = false;
  Outline line;             // open: from its start to the end of its last segment
  std::vector<int> shares;  // thousandths of the over-cut: at the start, then after each segment
};

struct Curve {
  int window = 0;
  CurveKind kind = CurveKind::template_cut;
  std::vector<CurveLine> lines;  // template_cut
};

struct LayerLines {
  std::vector<StraightLine> straight;
  std::vector<SkewLine> skew;
  std::vector<Curve> curves;
};

// Ellipses are ovals; drawn outlines are template cuts as a whole; the curves of other shapes are
// template cuts and their straight parts are lines.
LayerLines lines_of(const std::vector<Window>& windows);

// How far the outline strays at most from the ellipse in its bounding box, rounded up.
Length distance_from_ellipse(const Outline& outline);

}  // namespace mullion
