#pragma once

// The board on the cutter, face down, seen by the operator: its lettered edges, the guide, the
// squaring arm, the rail, the lines that are cut already and those to cut now.

#include "render/cutsheet/board_view.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {

void draw_board_as_it_lies(paper::Drawing& page, const BoardPicture& board,
                           const Placement& placement, const paper::Box& box);

// The back with its top edge up: all lines, to be drawn in pencil.
void draw_back(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

// The back with its top edge up: straight lines cut already, curves to cut.
void draw_curves(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

// The same with the slanting lines to cut, numbered.
void draw_skew_lines(paper::Drawing& page, const BoardPicture& board, const paper::Box& box);

}  // namespace mullion::cutsheet
