#include "engine/explain/families.h"

namespace mullion::explain {

std::vector<Explanation> cutting_codes() {
  using enum Severity;
  return {
      {"cutter-unknown", error, "no cutter has that name",
       "It is neither one that comes with the program nor a cutter file.",
       "`mullion cutter show bench -o mine.xml` writes a file to describe your own in."},
      {"cutter-version", error, "a cutter file is of a version that is not known",
       "Words may mean something else there, and a wrong reading costs board.",
       "Write version=\"1\", or use the program that wrote the file."},
      {"cutter-bad-length", error, "a length of a cutter file cannot be read",
       "Settings are worked out from it.", "Write 8, 8.5, 8 1/2 or 215.9 mm; below zero with a -."},
      {"cutter-empty-range", error, "a scale ends before it begins",
       "The guide or stop could not be set anywhere.",
       "Measure the least and the greatest setting again."},
      {"cutter-missing-element", error, "a part of the cutter is not described",
       "A plan needs its longest cut, its widest board and its over-cuts.",
       "Start from `mullion cutter show`, which has them all."},
      {"cutter-repeated-element", error, "a part of the cutter is described twice",
       "Two statements of one thing may contradict one another.", "Keep one of them."},
      {"cutter-repeated-stop", error, "there are two stops at one end of the cut",
       "A cut begins at one stop and ends at the other.", "Describe one near and one far stop."},
      {"cutter-over-cut-order", error, "the over-cuts are not listed by rising thickness",
       "Between two entries the over-cut is taken in proportion.",
       "List them from the thinnest board to the thickest."},
      {"cutter-too-many", error, "there are more over-cuts than the limit",
       "A shop has no more than a few thicknesses of board.", "Keep those that you cut."},
      {"cutter-no-layer", error, "there is no layer to cut", "A plan needs at least one board.",
       "Add a <layer>."},
      {"cutter-quantity", error, "fewer than one mat is to be cut", "There is nothing to plan.",
       "State a quantity of at least 1."},
      {"cutter-groove", error, "the panel of a V-groove cannot be cut out",
       "Its edge, half the groove's width outside the groove's middle, would cross itself.",
       "Make the groove narrower, or let it follow a plainer shape."},
      {"cutter-trim", error, "the trim leaves too little of an under-mat",
       "An under-mat that is taped behind the top mat is smaller by the trim on each side. Its "
       "windows must lie within what is left, bevels included.",
       "State a smaller --trim; 1/8 in or 3 mm is common practice, no source."},
      {"cutter-way", error, "the way of cutting needs more stops than the cutter has",
       "Each end of a cut that is not to be drawn needs a stop.",
       "Choose another --way, or leave it out: the quickest that is possible is then taken."},
      {"cutter-board-too-wide", error, "the board is too wide for the cutter",
       "Each cut needs the board across the rail, and it must lie flat there.",
       "Name another cutter with --cutter, or make the mat smaller."},
      {"cutter-cut-too-long", error, "a cut is longer than the cutter's rail",
       "The head runs off the rail before the corner is reached, over-cut included.",
       "Name another cutter with --cutter, or make the opening smaller."},
      {"cutting-beyond-guide", warning, "lines lie beyond the reach of the guide",
       "The guide sets the distance from the board's edge; inner openings often lie further in.",
       "Draw those lines from the template and cut them against the rail, as the plan says."},
      {"cutting-long-blank", warning, "a blank's side is longer than the cutter cuts",
       "It cannot be cut from the sheet in one pull.",
       "Have the blank cut to size by the supplier."},
      {"cutting-uneven-shift", note, "a layer is not moved by one amount from the one above it",
       "Where all its lines are, every setting changes by the same amount and mistakes show early.",
       "Set each cut as the plan gives it, or make the reveals alike."},
  };
}

}  // namespace mullion::explain
