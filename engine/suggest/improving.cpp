#include "engine/suggest/improving.h"

#include <algorithm>
#include <functional>

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

bool is_empty(const Block& block) {
  return block.kind != Kind::picture && block.parts.empty();
}

// Makes a block of changed parts whole again: no empty part, none of one part alone, kinds that
// alternate, and sizes that fit.
void settle(Block& block, Length gap) {
  if (block.kind == Kind::picture) return;
  std::vector<Block> parts;
  for (Block& part : block.parts) {
    settle(part, gap);
    if (is_empty(part)) continue;
    if (part.kind == block.kind) {
      std::move(part.parts.begin(), part.parts.end(), std::back_inserter(parts));
    } else {
      parts.push_back(std::move(part));
    }
  }
  if (parts.size() == 1) {
    block = Block(std::move(parts.front()));
    return;
  }
  block.parts = std::move(parts);
  const bool is_row = block.kind == Kind::row;
  Length along = gap * (static_cast<std::int64_t>(block.parts.size()) - 1), across;
  for (const Block& part : block.parts) {
    along += is_row ? part.width : part.height;
    across = std::max(across, is_row ? part.height : part.width);
  }
  block.width = is_row ? along : across;
  block.height = is_row ? across : along;
}

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
  Improvement(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
              const Boards& boards, Length gap)
      : items_(items), bonds_(bonds), boards_(boards), gap_(gap), best_{start, 0} {
    score_ = score_of(start, 0).value_or(0);
  }

  Improved run() {
    while (one_round() && best_.looked_at < most_steps_tried) continue;
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
      for (std::size_t j = 0; j < count && best_.looked_at < most_steps_tried; ++j) {
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
    const auto score = score_of(trial, score_ + least_gain);
    if (!score) return false;
    best_.block = std::move(trial);
    score_ = *score;
    return true;
  }

  // Nothing where it is below `least`.
  std::optional<double> score_of(const Block& block, double least) const {
    const auto board = boards_.around(block.width, block.height);
    if (!board) return std::nullopt;
    const auto criteria = judge(on_board(block, gap_, items_.size(), *board), block.width,
                                block.height, *board, least);
    if (!criteria || score(*criteria) < least) return std::nullopt;
    return score(*criteria);
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
  const Boards& boards_;
  Length gap_;
  Improved best_;
  double score_ = 0;
};

}  // namespace

Improved improved(const Block& start, const std::vector<Item>& items, const Bonds& bonds,
                  const Boards& boards, Length gap) {
  return Improvement(start, items, bonds, boards, gap).run();
}

}  // namespace mullion::suggest
