#pragma once

// Blocks of pictures: slicing arrangements, that is rows of columns of rows.
//
// A block is a picture, or a row or column of at least two parts that alternate in direction (a row
// in a row would be one longer row). Parts stand one gap apart and are centred across, until the
// block is hung (hanging.h) and has gaps and an alignment of its own. The number
// of slicing arrangements of n different pictures is n! times the large Schröder number S(n-1): 1,
// 2, 6, 22, 90, 394 (E. Schröder, Zeitschrift für Mathematik und Physik 15, 1870; OEIS A006318).
//
// Beside these there are arrangements that no cuts from edge to edge part (composed.h): their parts
// are pictures, or blocks in the middle, and each has a place of its own.

#include <cstdint>
#include <vector>

#include "engine/job/job.h"
#include "engine/layout/layout.h"

namespace mullion::suggest {

inline double number(Length length) {
  return static_cast<double>(length.ticks());
}

// The size of a picture's opening in the top mat, by its place in the list.
struct Item {
  Length width, height;
  bool may_turn = false;
  int group = -1;  // items of one group stay together; -1: none
  int order = 0;   // items with an order keep their sequence; 0: anywhere
};

// A part's upper left corner, from that of the block around it.
struct Corner {
  Length left, top;
};

struct Block {
  enum class Kind : std::uint8_t { picture, row, column, ring, pinwheel };
  Kind kind = Kind::picture;
  int item = -1;        // of a picture
  bool turned = false;  // of a picture
  Length width, height;
  std::vector<Block> parts;
  std::vector<Length> gaps;     // between the parts; empty: all alike, as the search has them
  Align align = Align::centre;  // of the parts, across
  Length moved;                 // a part of a row: down from its place; of a column: to the right
  std::vector<Corner> corners;  // of a ring's or a pinwheel's parts
  Ring ring;                    // of a ring
  bool has_centre = false;      // a ring: its last part lies in the middle
};

// Made of rows and columns alone, none of them moved.
bool is_slicing(const Block& block);

Block picture_block(const std::vector<Item>& items, int item, bool turned);

// The block's side in the direction of a row, or of a column.
Length along(const Block& block, Block::Kind direction);
Block::Kind other_way(Block::Kind direction);
double area(const Block& block);

// Puts two blocks side by side (row) or one above the other; a part of the same kind is opened, so
// that kinds alternate.
Block joined(Block::Kind kind, const Block& first, const Block& second, Length gap);

Block chain(Block::Kind kind, const std::vector<Block>& blocks, Length gap);

// Makes a block of changed parts whole again: no empty part, none of one part alone, kinds that
// alternate, and sizes that fit.
void settle(Block& block, Length gap);

// Every opening's rectangle by item, from the block's upper left corner.
std::vector<Rect> places(const Block& block, Length gap, std::size_t items);

// Two blocks that differ only by mirroring or by pictures of the same size have the same key.
std::string look_key(const Block& block);

}  // namespace mullion::suggest
