#pragma once

// The board on the cutter, face down, seen by the operator: its lettered edges, the guide, the
// squaring arm, the rail, the lines that are cut already and those to cut now.

#include <vector>

#include "engine/cuts/sheet/told.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {

// A cut's line on the board, in the Mat's coordinates.
struct BoardLine {
  Point start, end;
  int number = 0;
};

// An opening's number, and where it is written.
struct OpeningMark {
  Point middle;
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

void draw_board_as_it_lies(paper::Drawing& page, const BoardPicture& board,
                           const Placement& placement, const paper::Box& box);

// The back with its top edge up: all lines, to be drawn in pencil.
void draw_back(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

// The back with its top edge up: straight lines cut already, curves to cut.
void draw_curves(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

// The same with the slanting lines to cut, numbered.
void draw_skew_lines(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

}  // namespace mullion::cutsheet
