#pragma once

// What kind of arrangement a block is, by name.

#include "engine/suggest/block.h"

namespace mullion::suggest {

enum class Composition : std::uint8_t {
  single,             // one picture
  row,                // all in one row
  column,             // all in one column
  grid,               // rows of equally many pictures of one size
  flush_rows,         // rows that begin and end on common lines
  rows,               // rows of different lengths
  flush_columns,      // columns that begin and end on common lines
  columns,            // columns of different heights
  centre_piece,       // a larger picture with others on all its sides
  side_piece,         // a larger picture, all others on one side of it
  flush_block,        // rows of columns of rows, with the outer edges in line
  baseline_rows,      // rows in which pictures of different heights stand on one line
  title_below,        // a long low picture, as a title is, below all others
  ring,               // on a circle, around a centre
  oval,               // the same, drawn out to the board's shape
  pinwheel,           // four around a centre, each beginning where the one before it ends
  staggered_columns,  // columns of which every other one begins half a picture lower
  staggered_rows,     // rows of which every other one begins further to the right
  collage,            // any other
};

// Pictures are as good as in one line where they end within `flush_enough` of it, as a share of the
// block's side. Our own figure.
inline constexpr double flush_enough = 0.004;

Composition composition_of(const Block& block, Length gap, std::size_t items);

// "flush rows", as reports and the contact sheet name it; the latter in its language.
const char* name_of(Composition composition);

}  // namespace mullion::suggest
