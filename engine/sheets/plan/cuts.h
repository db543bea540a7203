#pragma once

// The cuts of one sheet in the order in which they are made, each with the setting of the stop.
//
// Exact lengths, from the sheet's upper left corner. Damaged edges are trimmed first; where the
// cutter is too small for that, the sheet is cut across and its parts are trimmed. The setting of
// the stop is the size of the part that the cut takes off; where the arm does not reach that far,
// and the part is waste or the whole was measured, the size of what remains; else the cut is
// measured and marked. A sheet is as large as its maker says to within a little only: no blank is
// measured by what remains of one, and where a blank reaches the sheet's far edge, a check cut
// takes off what is too much. A fallout loses its bevel first: two edges along lines that are
// measured from the edges of its back, since no stop holds a bevelled edge, then the other two with
// the new edges at the stop.

#include <vector>

#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

struct NumberedCut {
  int number = 0;                    // from 1
  Point from, to;                    // the line that stays: the kerf lies to its right or below it
  Length piece_width, piece_height;  // of the piece of board that is cut
  Length stop;
  bool rest_at_stop = false;  // the remainder lies at the stop, not the part
  bool marked = false;        // beyond the stop's reach: measure and mark `stop`
  bool trim = false;          // of a damaged edge
  bool check = false;         // of what the sheet is larger than stated; the line is its edge
  bool bevel = false;         // of a fallout's edge; marked without a length: beside the blank
                              // that is drawn on a fallout of another shape
  bool upright() const { return from.x == to.x; }
};

// False where a damaged edge cannot be trimmed on this cutter, not even part by part.
bool can_be_cut(const PlannedSheet& sheet, const SheetCutter& cutter);

std::vector<NumberedCut> cuts_of(const PlannedSheet& sheet, const SheetCutter& cutter);

// How often the stop is set anew over these cuts.
int settings_of(const std::vector<NumberedCut>& cuts);

// What is left of a sheet, with its place from the sheet's upper left corner.
struct Leftover {
  Rect rect;
  bool keep = false;  // large enough for another day
};

std::vector<Leftover> leftovers_of(const PlannedSheet& sheet, Length kerf, const KeepRule& keep);

}  // namespace mullion
