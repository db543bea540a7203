#pragma once

// Where a drawing has lines and letters, so that marks can be put where they hide none.

#include <vector>

#include "render/paper/drawing.h"

namespace mullion {

struct Ink {
  std::vector<paper::Edge> lines;
  std::vector<paper::Box> labels;
};

// Adds the strokes and labels of the drawing; hatching does not count.
void add_ink(Ink& ink, const paper::Drawing& drawing, const paper::Transform& placed = {});

// The lines of the board itself: its edges, cuts, grooves, and where bevels come out.
std::vector<paper::Edge> board_lines(const paper::Drawing& board);

// What of the ink may lie in the box.
Ink ink_in(const Ink& ink, const paper::Box& box);

struct Interval {
  double from = 0, to = 0;
};

// Where along the straight line, level or upright, there is ink nearer to it than `reach`: in
// points from its start.
std::vector<Interval> ink_beside(const Ink& ink, const paper::Edge& line, double reach);

// The place in [from, to] nearest to the wished one that is farther than `clearance` from all
// intervals; the wished place where there is none.
double clear_place(const std::vector<Interval>& taken, double wished, double from, double to,
                   double clearance);

}  // namespace mullion
