#pragma once

// Blocks that fit on no board, to say what would have fitted: the smallest of them, that is those
// than which none is smaller both ways.

#include <vector>

#include "engine/suggest/boards.h"

namespace mullion::suggest {

class NearMisses {
 public:
  struct Size {
    Length width, height;
  };

  void add(Length width, Length height);
  void add(const NearMisses& other);
  const std::vector<Size>& smallest() const { return smallest_; }

 private:
  std::vector<Size> smallest_;
};

// The widest border, in whole increments from `least` to less than `wished`, with which one of the
// blocks fits on the job's board or one of the stock.
std::optional<Length> widest_border(const NearMisses& misses, const Job& bare,
                                    const std::vector<Board>& stock, Length least, Length wished);

// The board of any size that takes one of the blocks with that border and reaches least beyond one
// of the sizes.
std::optional<Board> nearest_board(const NearMisses& misses, const Job& bare,
                                   const std::vector<Board>& sizes, Length border);

}  // namespace mullion::suggest
