#include "engine/suggest/improving.h"

#include <algorithm>
#include <functional>

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

void list_pictures(Block& block, std::vector<Block*>& out) {
  if (block.kind == Kind::picture) out.push_back(&block);
  for (Block& part : block.parts) list_pictures(part, out);
}

std::vector<Block*> pictures_of(Block& block) {
  std::vector<Block*> out;
  list_pictures(block, out);
  return out;
}

void put_beside(Block& picture, Block& other, Kind kind, bool before) {
  Block pair;
  pair.kind = kind;
  pair.parts = {picture, other};
  if (!before) std::swap(pair.parts.front(), pair.parts.back());
  picture = Block();
  picture.kind = kind;  // empty
  other = std::move(pair);
}

class Improvement {
 public:
  Improvement(const Block& start, const std::vector<Item>& items, const Bonds& bonds, Length gap,
              const ScoreOf& score_of, std::uint64_t most_steps)
      : items_(items),
        bonds_(bonds),
        gap_(gap),
        score_of_(score_of),
        most_steps_(most_steps),
        best_{start, 0} {
    score_ = score_of(start, 0).value_or(0);
  }

  Improved run() {
    while (one_round() && best_.looked_at < most_steps_) continue;
    return std::move(best_);
  }

 private:
  using Pictures = std::vector<Block*>;

  // Whether any step helped.
  bool one_round() {
    bool helped = false;
    const std::size_t count = items_.size();
    for (std::size_t i = 0; i < count; ++i) {
      helped |= takes([&](const Pictures& at) { return turn(*at[i]); });
      for (std::size_t j = 0; j < count && best_.looked_at < most_steps_; ++j) {
        if (i < j) helped |= takes([&](const Pictures& at) { return exchange(*at[i], *at[j]); });
        if (i == j) continue;
        for (const Kind kind : {Kind::row, Kind::column}) {
          for (const bool before : {true, false}) {
            helped |= takes([&](const Pictures& at) {
              put_beside(*at[i], *at[j], kind, before);
              return true;
            });
          }
        }
      }
    }
    return helped;
  }

  // Tries a step on a copy, and keeps the copy where it scores better.
  template <class Step>
  bool takes(const Step& step) {
    Block trial = best_.block;
    if (!step(pictures_of(trial))) return false;
    settle(trial, gap_);
    if (bonds_.any() && !bonds_.are_kept(trial)) return false;
    ++best_.looked_at;
    constexpr double least_gain = 1e-6;
    const auto score = score_of_(trial, score_ + least_gain);
    if (!score) return false;
    best_.block = std::move(trial);
    score_ = *score;
    return true;
  }

  bool turn(Block& picture) const {
    const Item& item = items_[static_cast<std::size_t>(picture.item)];
    if (!item.may_turn || item.width == item.height) return false;
    picture = picture_block(items_, picture.item, !picture.turned);
    return true;
  }

  static bool exchange(Block& a, Block& b) {
    if (a.width == b.width && a.height == b.height) return false;
    std::swap(a, b);
    return true;
  }

  const std::vector<Item>& items_;
  const Bonds& bonds_;
  Length gap_;
  const ScoreOf& score_of_;
  std::uint64_t most_steps_;
  Improved best_;
  double score_ = 0;
};

}  // namespace

Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  Length gap, const ScoreOf& score_of, std::uint64_t most_steps) {
  return Improvement(start, items, bonds, gap, score_of, most_steps).run();
}

Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  const Boards& boards, Length gap, std::uint64_t most_steps) {
  const ScoreOf score_of = [&](const Block& block, double least) -> std::optional<double> {
    const auto board = boards.around(block.width, block.height);
    if (!board) return std::nullopt;
    const auto criteria =
        judge(on_board(block, gap, items.size(), *board), block.width, block.height, *board, least);
    if (!criteria || score(*criteria) < least) return std::nullopt;
    return score(*criteria);
  };
  return improved(start, items, bonds, gap, score_of, most_steps);
}

}  // namespace mullion::suggest
