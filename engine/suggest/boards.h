#pragma once

// The boards that a suggestion may lie on: the one that the job gives by its outer size or frame,
// those of a list either way round, or any.

#include <optional>
#include <vector>

#include "engine/suggest/criteria.h"
#include "engine/suggest/fitting.h"

namespace mullion::suggest {

class Boards {
 public:
  // `border` is the least one around a block, the one at the bottom greater by `bottom_extra`.
  Boards(const Job& job, const std::vector<Board>& stock, Length border, Length bottom_extra);

  // The smallest board that takes a block of this size; any board is of whole increments.
  std::optional<Board> around(Length width, Length height) const;

  // The largest block that each size takes.
  std::vector<Room> rooms() const;

  // Those to choose from; none where any may be had.
  const std::vector<Board>& sizes() const { return sizes_; }

 private:
  std::vector<Board> sizes_;  // by rising area
  Length around_;             // both borders together
  Length bottom_extra_, increment_;
};

}  // namespace mullion::suggest
