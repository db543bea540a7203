#pragma once

// Which sheets of a tiling are needed: those that show a line of the board, and of the others as
// few as join them all.

#include <vector>

#include "render/paper/tiling.h"
#include "render/template/ink.h"

namespace mullion {

class NeededSheets {
 public:
  // The lines are in the coordinates of the tiling, in points.
  NeededSheets(const paper::Tiling& tiling, const std::vector<paper::Edge>& lines);

  bool has(std::size_t row, std::size_t column) const { return needed_[row][column]; }
  std::size_t count() const;
  std::size_t left_out() const;

 private:
  bool join_parts();

  std::vector<std::vector<bool>> needed_;
};

}  // namespace mullion
