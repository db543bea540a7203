#include "engine/suggest/hanging.h"

#include <algorithm>

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

// How many gaps stand along the longest line through the block in that direction.
std::int64_t gaps_along(const Block& block, Kind direction) {
  if (block.kind == Kind::picture) return 0;
  if (block.kind == direction) {
    std::int64_t count = static_cast<std::int64_t>(block.parts.size()) - 1;
    for (const Block& part : block.parts) count += gaps_along(part, direction);
    return count;
  }
  const auto longest = std::max_element(
      block.parts.begin(), block.parts.end(),
      [&](const Block& a, const Block& b) { return along(a, direction) < along(b, direction); });
  return gaps_along(*longest, direction);
}

// Which of the whole block's edges a part reaches.
struct Reach {
  bool first = true, last = true;
};

class Stretcher {
 public:
  Stretcher(const Hanging& hanging, bool to_outer_edges)
      : hanging_(hanging), to_outer_edges_(to_outer_edges) {}

  Block stretched(const Block& block, Length width, Length height, Reach across, Reach down) const {
    if (block.kind == Kind::picture) return block;
    const bool is_row = block.kind == Kind::row;
    const Length room = is_row ? width : height, depth = is_row ? height : width;
    const Reach main = is_row ? across : down, cross = is_row ? down : across;
    const std::vector<Length> sizes = sizes_of(block, room);
    Block out = block;
    out.gaps.clear();
    Length taken, deepest;
    for (std::size_t i = 0; i < block.parts.size(); ++i) {
      const Reach own{main.first && i == 0, main.last && i + 1 == block.parts.size()};
      out.parts[i] = is_row ? stretched(block.parts[i], sizes[i], depth, own, cross)
                            : stretched(block.parts[i], depth, sizes[i], cross, own);
      taken += along(out.parts[i], block.kind);
      deepest = std::max(deepest, along(out.parts[i], other_way(block.kind)));
    }
    out.gaps = gaps_for(room - taken, block.parts.size() - 1);
    for (const Length gap : out.gaps) taken += gap;
    out.width = is_row ? taken : deepest;
    out.height = is_row ? deepest : taken;
    if (to_outer_edges_ && cross.first != cross.last) {
      out.align = cross.first ? Align::start : Align::end;
    }
    return out;
  }

 private:
  // Each part as large as its gaps' share of what is left over makes it.
  std::vector<Length> sizes_of(const Block& block, Length room) const {
    const std::int64_t between = static_cast<std::int64_t>(block.parts.size()) - 1;
    std::int64_t gaps = between;
    Length left = room - hanging_.gap * between;
    for (const Block& part : block.parts) {
      gaps += gaps_along(part, block.kind);
      left -= along(part, block.kind);
    }
    left = std::max(left, Length());
    std::vector<Length> out;
    for (const Block& part : block.parts) {
      const std::int64_t steps =
          left.ticks() * gaps_along(part, block.kind) / (gaps * hanging_.increment.ticks());
      out.push_back(along(part, block.kind) + hanging_.increment * steps);
    }
    return out;
  }

  // Gaps that take the room, the middle ones a little wider where it does not divide.
  std::vector<Length> gaps_for(Length room, std::size_t count) const {
    const auto number = static_cast<std::int64_t>(count);
    const Length step = hanging_.increment;
    room = std::clamp(room, hanging_.gap * number, hanging_.gap * (widest_gap * number));
    const std::int64_t steps = room.ticks() / (number * step.ticks());
    std::vector<Length> out(count, std::max(step * steps, hanging_.gap));
    Length rest = room - out.front() * number;
    const auto widen = [&](std::size_t i, Length by) {
      out[i] += by;
      rest -= by;
    };
    if (rest < Length()) return out;
    // From the middle outwards, two by two, so that a line stays its own mirror image.
    if (count % 2 == 1 && (rest.ticks() / step.ticks()) % 2 == 1) widen(count / 2, step);
    for (std::size_t i = count / 2; i-- > 0 && rest >= step * 2;) {
      widen(i, step);
      widen(count - 1 - i, step);
    }
    for (std::size_t i = 0; i < count && rest >= step; ++i) widen(i, step);
    widen(count / 2, rest);
    return out;
  }

  const Hanging& hanging_;
  bool to_outer_edges_;
};

bool is_given(const Boards& boards) {
  return !boards.sizes().empty();
}

// Borders to try, from the widest that leaves the block as it is in one direction to the least.
std::vector<Length> borders_for(const Block& block, const Board& board, const Hanging& hanging,
                                int ways) {
  const Length across = half_rounded_down(board.width - block.width);
  const Length down = half_rounded_down(board.height - board.bottom_extra - block.height);
  const Length most = std::max(std::min(across, down), hanging.border);
  std::vector<Length> out;
  for (int i = 0; i < ways; ++i) {
    const std::int64_t ticks = (most - hanging.border).ticks() * i / std::max(ways - 1, 1);
    const Length border =
        most - hanging.increment * (ticks / std::max<std::int64_t>(hanging.increment.ticks(), 1));
    if (out.empty() || border != out.back()) out.push_back(border);
  }
  return out;
}

class Best {
 public:
  Best(const Board& board, const Hanging& hanging, double least)
      : board_(board), hanging_(hanging), least_(least) {}

  void look_at(const Block& block) {
    if (block.width + hanging_.border * 2 > board_.width ||
        block.height + hanging_.border * 2 + board_.bottom_extra > board_.height) {
      return;
    }
    const auto criteria = judge(on_board(block, hanging_.gap, hanging_.items, board_), block.width,
                                block.height, board_, least_);
    if (!criteria || score(*criteria) < least_) return;
    constexpr double least_gain = 1e-9;
    least_ = score(*criteria) + least_gain;
    best_ = Ranked{block, board_, *criteria, score(*criteria)};
  }

  std::optional<Ranked> take() { return std::move(best_); }

 private:
  Board board_;
  const Hanging& hanging_;
  double least_;
  std::optional<Ranked> best_;
};

// The block with wider gaps throughout, stretched in every way.
void look_at_ways(Best& best, const Block& block, const Board& board, const Hanging& hanging,
                  int ways) {
  for (const bool to_outer_edges : {false, true}) {
    for (const Length border : borders_for(block, board, hanging, ways)) {
      best.look_at(stretched(block, hanging, board.width - border * 2,
                             board.height - border * 2 - board.bottom_extra, to_outer_edges));
    }
  }
}

std::optional<Ranked> best_of(const Block& block, const Boards& boards, const Hanging& hanging,
                              double least, int ways, bool with_wider_gaps) {
  const auto board = boards.around(block.width, block.height);
  if (!board) return std::nullopt;
  Best best(*board, hanging, least);
  best.look_at(block);
  if (block.kind == Kind::picture) return best.take();
  look_at_ways(best, block, *board, hanging, is_given(boards) ? ways : 1);
  if (!with_wider_gaps || !is_given(boards)) return best.take();
  for (const std::int64_t halves : {3, 4, 6, 8}) {
    Hanging wider = hanging;
    wider.gap = round_to_multiple(half_rounded_down(hanging.gap * halves), hanging.increment);
    Block wide = block;
    settle(wide, wider.gap);
    if (wide.width + hanging.border * 2 > board->width ||
        wide.height + hanging.border * 2 + board->bottom_extra > board->height) {
      break;
    }
    look_at_ways(best, wide, *board, wider, ways);
  }
  return best.take();
}

}  // namespace

Block stretched(const Block& block, const Hanging& hanging, Length width, Length height,
                bool to_outer_edges) {
  return Stretcher(hanging, to_outer_edges).stretched(block, width, height, {}, {});
}

std::optional<Ranked> hung(const Block& block, const Boards& boards, const Hanging& hanging,
                           double least) {
  constexpr int ways = 7;
  return best_of(block, boards, hanging, least, ways, true);
}

std::optional<double> hung_score(const Block& block, const Boards& boards, const Hanging& hanging,
                                 double least) {
  constexpr int ways = 2;
  const auto best = best_of(block, boards, hanging, least, ways, false);
  if (!best) return std::nullopt;
  return best->score;
}

}  // namespace mullion::suggest
