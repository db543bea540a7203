#pragma once

// Whether any arrangement of rows and columns fits into a room, and some that do.
//
// A table has, for every choice of the items, the least width for each height and the least height
// for each width: the shape function of a slicing arrangement (L. Stockmeyer, Information and
// Control 57, 1983), here over all ways to part a choice in two. Items of one size are counted, not
// told apart. Sides are counted in the greatest measure that goes into all of them and the gap.
// Where the table would grow too large, sides are rounded, or items that are nearly alike taken for
// one size: upwards to find arrangements, all of which fit, and downwards to prove that none does.

#include <cstdint>
#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

struct Room {
  Length width, height;
};

class Fitting {
 public:
  enum class Rounding : std::uint8_t { up, down };

  // The rooms are those for a block alone, without borders; there is at least one. More effort
  // rounds less.
  Fitting(const std::vector<Item>& items, Length gap, std::vector<Room> rooms, Rounding rounding,
          double effort = 1);

  // With sizes rounded down, false proves that nothing fits.
  bool any() const;
  // Nothing was rounded: any() is true exactly where an arrangement fits.
  bool is_exact() const { return is_exact_; }

  // Blocks that fit, at most so many, of different ways to part the items; of a table that is
  // rounded up or exact. Bonds are not looked at.
  std::vector<Block> blocks(std::size_t most) const;

  // The least sizes of all items together, within the largest of the rooms both ways.
  std::vector<Room> least_sizes() const;

 private:
  using Cells = std::int16_t;
  struct Size {
    Cells width = 0, height = 0;
    bool may_turn = false;
    std::vector<int> items;
  };
  class Maker;

  void sort_into_sizes(const std::vector<Item>& items, Length gap, Rounding rounding);
  void merge_sizes(Rounding rounding);
  bool is_too_much() const;
  bool has_room() const;
  void fill();
  void fill_single(std::size_t state, const Size& size);
  void close(std::size_t state);
  std::vector<int> digits(std::size_t state) const;

  Cells* widths(std::size_t state) { return &widths_[state * by_height_]; }
  Cells* heights(std::size_t state) { return &heights_[state * by_width_]; }
  const Cells* widths(std::size_t state) const { return &widths_[state * by_height_]; }
  const Cells* heights(std::size_t state) const { return &heights_[state * by_width_]; }

  std::vector<Item> items_;
  Length gap_;
  std::vector<Room> rooms_;
  std::vector<std::pair<Cells, Cells>> room_cells_;
  Length unit_;
  double effort_;
  bool is_exact_ = true, is_filled_ = false;
  std::vector<Size> sizes_;
  std::vector<std::size_t> weights_;  // of a size's count in a state
  std::size_t states_ = 1;
  Cells most_width_ = 0, most_height_ = 0;
  std::size_t by_height_ = 0, by_width_ = 0;  // entries of a state, padded
  std::vector<Cells> widths_, heights_;       // the least, by state and height, or width
};

}  // namespace mullion::suggest
