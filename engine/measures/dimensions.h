#pragma once

// Every dimension that a drawing of the mat from the front shows: borders, gaps, the openings' and
// the outer sizes, reveals. Each has the name by which an edit states or frees it
// (engine/edit/edit.h).
//
// Coordinates as in Layout: ticks, from the upper left corner of the mat seen from the front. An
// opening's width and height are those of what is seen through it (Mat::sights), as the job file
// states them; all else is measured on the top mat's back, where the lines are.

#include <string>
#include <vector>

#include "engine/mat/mat.h"

namespace mullion {

enum class Direction { across, down };

struct Dimension {
  std::string name;  // "border.left", "opening.dune.width", "arrange.1.gap.2", "layer.2.reveal"
  Length value;
  bool stated = false;  // by the job; else it is found, or what is usual
  Direction along = Direction::across;
  Length from, to;  // where the dimension's line begins and ends; to - from is the value
  Length at;        // where it runs, in the other direction
};

// Outer sizes, borders, rings, places on the mat and gaps from the outermost row or column inwards,
// openings in their order, reveals by layer. A reveal is shown at the first opening that has it; a
// layer's reveals that are alike on all sides are one measure.
std::vector<Dimension> dimensions_of(const Job& job, const Layout& layout, const Mat& mat);

}  // namespace mullion
