#pragma once

// Tiled sheets put together as a framer does it: each sheet is laid beside its neighbour so that
// the marks on their join meet.
//
// A sheet is known by its label "Sheet ROW-COLUMN". A join is a long dash-dotted line across the
// sheet; the two solid lines that cross it are its marks. Sheet 1-1 stays where it is; a sheet is
// moved, never turned or stretched, by the mean of what its two marks ask for.

#include <vector>

#include "tests/oracle/drawn_page.h"

namespace oracle {

struct JoinedSheets {
  DrawnPage whole;  // strokes only, in the coordinates of sheet 1-1
  int rows = 0, columns = 0;
  std::vector<double> joins_x, joins_y;  // where the joins run, in rising order
  std::vector<Spot> marks;               // on all joins, each where its line crosses the join
  double worst_mark = 0;  // points that a mark lies off its neighbour's after the sheets were laid
};

// One for each board: a new one begins with every sheet 1-1. Pages without such a label are left
// out. Throws std::runtime_error where sheets or marks are missing.
std::vector<JoinedSheets> join_sheets(const std::vector<DrawnPage>& pages);

}  // namespace oracle
