#pragma once

// Figures that stand in where a job does not state its own, in its system of measurement: those of
// an inch job, and in a metric job whole millimetres or centimetres near them, so that its edges
// come to steps of a metric rule. All are told here alone.

#include "engine/length/format.h"

namespace mullion {

struct Usual {
  Length increment;  // of the rule

  // Common practice, no source.
  Length ply;                   // of board: 4-ply is 1/16 in or 1.5 mm thick
  Length overlap, reveal;       // on each side
  Length allowance, lip, face;  // of a frame
  Length hidden_margin;         // of a window that is not to be seen: our own figure

  // A published course sheet asks for borders of at least 2 in on boards to 11 x 14 in and at least
  // 3 in on larger ones (E. Stapel, "Matting and presentation").
  Length small_border, large_border;
  Length small_board_short, small_board_long;

  // Our own figures.
  Length gap;            // where nothing else decides it
  Length least_opening;  // of free size, so that it stays an opening
};

const Usual& usual_for(Unit unit);

// Of a board that was not measured, in proportion to its plies.
Length thickness_of(int ply, Unit unit);

// Whether a board of that size is a small one, either way round.
bool is_small_board(Length width, Length height, Unit unit);

}  // namespace mullion
