#include "engine/suggest/near_misses.h"

#include <algorithm>

#include "engine/suggest/arranged_job.h"

namespace mullion::suggest {
namespace {

bool any_fits(const NearMisses& misses, const Boards& boards) {
  return std::any_of(
      misses.smallest().begin(), misses.smallest().end(),
      [&](const NearMisses::Size& size) { return boards.around(size.width, size.height); });
}

// Width and height beyond the nearest of the sizes, together.
Length beyond(const Board& board, const std::vector<Board>& sizes) {
  std::optional<Length> least;
  for (const Board& size : sizes) {
    const Length reach = std::max(board.width - size.width, Length()) +
                         std::max(board.height - size.height, Length());
    if (!least || reach < *least) least = reach;
  }
  return least.value_or(Length());
}

}  // namespace

void NearMisses::add(Length width, Length height) {
  for (const Size& size : smallest_) {
    if (size.width <= width && size.height <= height) return;
  }
  std::erase_if(smallest_,
                [&](const Size& size) { return size.width >= width && size.height >= height; });
  smallest_.push_back({width, height});
}

void NearMisses::add(const NearMisses& other) {
  for (const Size& size : other.smallest_) add(size.width, size.height);
}

std::optional<Length> widest_border(const NearMisses& misses, const Job& bare,
                                    const std::vector<Board>& stock, Length least, Length wished) {
  const Length step = bare.scale.increment;
  const auto fits = [&](std::int64_t steps) {
    const Length border = step * steps;
    return any_fits(misses, Boards(bare, stock, border, bottom_extra(bare, border)));
  };
  std::int64_t low = (least.ticks() + step.ticks() - 1) / step.ticks();
  std::int64_t high = (wished.ticks() + step.ticks() - 1) / step.ticks();
  if (low >= high || !fits(low)) return std::nullopt;
  while (high - low > 1) {
    const std::int64_t middle = low + (high - low) / 2;
    (fits(middle) ? low : high) = middle;
  }
  return step * low;
}

std::optional<Board> nearest_board(const NearMisses& misses, const Job& bare,
                                   const std::vector<Board>& sizes, Length border) {
  Job any = bare;
  any.frame.reset();
  any.outer_width.reset();
  any.outer_height.reset();
  const Boards boards(any, {}, border, bottom_extra(bare, border));
  std::optional<Board> best;
  for (const NearMisses::Size& size : misses.smallest()) {
    const auto board = boards.around(size.width, size.height);
    if (!best || beyond(*board, sizes) < beyond(*best, sizes)) best = board;
  }
  return best;
}

}  // namespace mullion::suggest
