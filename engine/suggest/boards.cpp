#include "engine/suggest/boards.h"

#include <algorithm>

namespace mullion::suggest {
namespace {

std::optional<Board> given_board(const Job& job) {
  if (job.outer_width && job.outer_height) return Board{*job.outer_width, *job.outer_height};
  if (!job.frame) return std::nullopt;
  return Board{job.frame->rabbet_width - job.frame->allowance,
               job.frame->rabbet_height - job.frame->allowance};
}

double area(const Board& board) {
  return to_inches(board.width) * to_inches(board.height);
}

Length rounded_up(Length length, Length step) {
  const std::int64_t steps = (length.ticks() + step.ticks() - 1) / step.ticks();
  return step * steps;
}

}  // namespace

Boards::Boards(const Job& job, const std::vector<Board>& stock, Length border, Length bottom_extra)
    : around_(border * 2), bottom_extra_(bottom_extra), increment_(job.scale.increment) {
  if (const auto given = given_board(job)) {
    sizes_ = {*given};
    return;
  }
  for (const Board& board : stock) {
    sizes_.push_back(board);
    if (board.width != board.height) sizes_.push_back({board.height, board.width});
  }
  std::stable_sort(sizes_.begin(), sizes_.end(),
                   [](const Board& a, const Board& b) { return area(a) < area(b); });
}

std::vector<Room> Boards::rooms() const {
  std::vector<Room> out;
  for (const Board& board : sizes_) {
    out.push_back({board.width - around_, board.height - around_ - bottom_extra_});
  }
  return out;
}

std::optional<Board> Boards::around(Length width, Length height) const {
  const Length w = width + around_, h = height + around_ + bottom_extra_;
  if (sizes_.empty()) {
    return Board{rounded_up(w, increment_), rounded_up(h, increment_), bottom_extra_};
  }
  for (const Board& board : sizes_) {
    if (w <= board.width && h <= board.height) {
      return Board{board.width, board.height, bottom_extra_};
    }
  }
  return std::nullopt;
}

}  // namespace mullion::suggest
