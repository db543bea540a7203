#pragma once

// A guillotine pattern: how one rectangle of board is cut, edge to edge, into blanks and waste.
//
// Lengths are exact. A pattern is a tree. Parts of a `columns` node lie from left to right and are
// parted by upright cuts; parts of a `rows` node lie from top to bottom and are parted by level
// cuts. Every cut takes one kerf, so the parts and the kerfs between them add up to the whole. The
// one exception: a last part of waste without extent stands for a cut along the edge whose kerf
// lies partly outside the board.

#include <optional>
#include <vector>

#include "engine/length/length.h"

namespace mullion {

struct Pattern {
  enum class Kind { waste, blank, columns, rows };
  Kind kind = Kind::waste;
  Length width, height;
  int blank = -1;       // which blank, as an index into the list that was asked for
  bool turned = false;  // by a quarter turn
  std::vector<Pattern> parts;
};

struct PlacedBlank {
  int blank = -1;
  bool turned = false;
  Length left, top, width, height;
};

// What a cutter does to a sheet.
struct CutLimits {
  Length kerf;                              // taken by every cut; a knife takes none
  std::optional<Length> longest_cut = {};   // nothing: any cut can be made
  std::optional<Length> widest_board = {};  // across the rail; nothing: any board can be laid

  // Whether a board can be cut through, by a cut of this length, across this side.
  bool allow(Length cut, Length across) const {
    return (!longest_cut || cut <= *longest_cut) && (!widest_board || across <= *widest_board);
  }
};

// Every blank of the pattern, measured from its upper left corner.
std::vector<PlacedBlank> blanks_in(const Pattern& pattern, Length kerf);

// The same blanks in the same arrangement, pushed up and to the left in a board of width x height,
// so that what is left over lies together in few large rectangles. Sizes of inner nodes and waste
// of the input are not read. Nested parts of a kind become one, and equal parts lie side by side,
// so that one stop setting serves them all. The blanks must fit, by cuts within the limits.
Pattern pushed_together(const Pattern& pattern, Length width, Length height,
                        const CutLimits& limits);

}  // namespace mullion
