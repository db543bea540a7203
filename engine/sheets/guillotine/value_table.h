#pragma once

// The dynamic programme behind best_pattern: the greatest value of every rectangle whose sides are
// cut points.
//
// Whole numbers of any one unit. Pieces may be used any number of times. A rectangle's best pattern
// is one piece, or two smaller rectangles side by side, or one above the other. Three facts keep
// the search short, and none of them loses an optimum:
//  - A row of strips needs as its first strip only one that is not itself best cut into a row, and
//    the narrowest will do, so that it takes at most half.
//  - A rectangle of height y holds at most width * k(y), where k is the best value per unit of
//    width of pieces stacked up to y (a one-dimensional knapsack). What a strip falls short of this
//    is lost for good: strips that lose as much as the best pattern found are left out.
//  - Strips are kept in the order of that loss, so the first that is left out ends the search.

#include <cstdint>
#include <vector>

#include "engine/sheets/guillotine/cut_points.h"
#include "engine/sheets/guillotine/pattern.h"

namespace mullion {

struct UnitPiece {
  std::int64_t width = 0, height = 0;  // at least 1
  std::int64_t value = 0;              // at least 1
  int blank = -1;
  bool turned = false;
};

class ValueTable {
 public:
  // All pieces fit the sheet. The value of a full sheet stays below 2^50. `widest` is the longest
  // level cut, `tallest` the longest upright one. Where both are less than the sheet's sides, only
  // a piece of its own size can be had.
  ValueTable(const CutPoints& across, const CutPoints& down, std::vector<UnitPiece> pieces,
             std::int64_t widest, std::int64_t tallest);

  std::int64_t best() const { return values_.back(); }

  // A pattern of that value, as a tree of kinds and blanks; it holds no sizes and no waste.
  Pattern pattern() const;

 private:
  struct Cell {
    std::size_t across, down;
  };
  std::int64_t value(std::size_t across, std::size_t down) const {
    return values_[across * down_.size() + down];
  }
  void place_pieces();
  void fill(const std::vector<double>& per_width, const std::vector<double>& per_height);
  Pattern pattern_of(Cell cell) const;
  bool parts_at(Cell cell, Cell& first, Cell& second, Pattern::Kind& kind) const;

  const PointIndex& across_;
  const PointIndex& down_;
  std::vector<UnitPiece> pieces_;
  std::int64_t widest_, tallest_;
  std::vector<std::int64_t> values_;
};

}  // namespace mullion
