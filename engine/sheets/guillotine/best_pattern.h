#pragma once

// The most valuable guillotine pattern of one sheet, when each blank may be cut any number of
// times.
//
// Exact lengths; values are whole numbers. The kerf is accounted for properly: a blank that spans
// the sheet needs no cut there, so sheet and blanks all grow by one kerf. Exact while the sheet has
// no more than a few thousand useful cut points a side, as it has with any shop's sizes; beyond
// that the answer is a good pattern and a bound that holds.

#include <cstdint>
#include <optional>
#include <vector>

#include "engine/sheets/guillotine/cut_points.h"
#include "engine/sheets/guillotine/pattern.h"
#include "engine/sheets/guillotine/value_table.h"

namespace mullion {

struct BlankSize {
  Length width, height;
  bool may_turn = true;
};

struct BestPattern {
  std::int64_t value = 0;
  std::int64_t bound = 0;  // no pattern is worth more; equal to the value where that is exact
  Pattern pattern;
};

// Keeps what depends on the sizes alone, so that many sets of values can be asked for.
class PatternSearch {
 public:
  // Throws std::invalid_argument unless sizes are positive and the kerf is not negative. Blanks
  // that do not fit are left out, or could only be had by too long a cut. The search is exact while
  // the pairs of cut points, across and down, are no more than `most_cells`; each takes 8 bytes.
  PatternSearch(Length width, Length height, CutLimits limits, std::vector<BlankSize> blanks,
                std::size_t most_cells = 10'000'000);

  // One value for each blank; a blank worth nothing or less is left out. Throws
  // std::invalid_argument where a full sheet could be worth 2^50 or more.
  BestPattern find(const std::vector<std::int64_t>& values) const;

  // The same blanks in another board; those whose value is not positive are of no interest there.
  PatternSearch within(Length width, Length height, const std::vector<std::int64_t>& values) const;

  // mullion::pushed_together in this very sheet.
  Pattern pushed_together(const Pattern& pattern) const;

  Length width() const { return width_; }
  Length height() const { return height_; }
  const std::vector<BlankSize>& blanks() const { return blanks_; }

  // The time that find takes, measured in cells of the value table.
  std::int64_t effort() const;

 private:
  PatternSearch(Length width, Length height, CutLimits limits, std::vector<BlankSize> blanks,
                std::size_t most_cells, const std::vector<std::int64_t>& values);
  struct Grid {
    CutPoints across, down;
    std::int64_t widest = 0, tallest = 0;  // the longest cuts
    std::vector<UnitPiece> pieces;  // in steps of the grid, grown by the kerf, without values
  };
  enum class Rounding { none, up, down };
  bool can_be_had(Length width, Length height) const;
  bool make_grid(Grid& grid, Rounding rounding, const std::vector<std::int64_t>& values) const;
  ValueTable table(const Grid& grid, const std::vector<std::int64_t>& values) const;

  Length width_, height_;
  CutLimits limits_;
  std::size_t most_cells_;
  std::vector<BlankSize> blanks_;
  Grid grid_;                    // every pattern of it can be cut
  std::optional<Grid> relaxed_;  // unless that one is exact: every pattern that can be cut is in it
};

}  // namespace mullion
