#include "engine/suggest/ranking.h"

#include <algorithm>

#include "engine/suggest/difference.h"

namespace mullion::suggest {
namespace {

void list_items(const Block& block, std::vector<int>& out) {
  if (block.kind == Block::Kind::picture) out.push_back(block.turned ? ~block.item : block.item);
  for (const Block& part : block.parts) list_items(part, out);
}

// Of two arrangements of one plan and one score the first in the order of the pictures.
bool before(const Ranked& a, const Ranked& b) {
  if (a.score != b.score) return a.score > b.score;
  std::vector<int> a_items, b_items;
  list_items(a.block, a_items);
  list_items(b.block, b_items);
  return a_items < b_items;
}

}  // namespace

Ranking::Ranking(std::size_t most, const Boards& boards, const std::vector<Item>& items, Length gap)
    : most_(most), boards_(boards), items_(items.size()), gap_(gap) {
  for (const Item& item : items) openings_ += to_inches(item.width) * to_inches(item.height);
}

std::optional<Board> Ranking::board_around(Length width, Length height) {
  const auto board = boards_.around(width, height);
  if (!board && by_plan_.empty()) misses_.add(width, height);
  return board;
}

bool Ranking::may_enter(Length width, Length height) {
  const auto board = board_around(width, height);
  if (!board) return false;
  if (by_plan_.size() < most_) return true;
  constexpr double rounding = 1e-9;
  return best_score(openings_, width, height, *board) + rounding >= least_;
}

void Ranking::add(const Block& block) {
  add(places(block, gap_, items_), block.width, block.height, [&] { return block; });
}

void Ranking::add(const std::vector<Rect>& places, Length width, Length height,
                  const std::function<Block()>& block) {
  const auto board = board_around(width, height);
  if (!board) return;
  on_board_ = places;
  centre(on_board_, width, height, *board);
  const double least = by_plan_.size() < most_ ? 0 : least_;
  const auto criteria = judge(on_board_, width, height, *board, least);
  if (!criteria || suggest::score(*criteria) < least) return;
  Block whole = block();
  const std::string plan = plan_key(whole);
  enter(plan, {std::move(whole), *board, *criteria, suggest::score(*criteria)});
}

void Ranking::add(const Ranking& other) {
  misses_.add(other.misses_);
  for (const auto& [plan, ranked] : other.by_plan_) enter(plan, ranked);
}

void Ranking::enter(const std::string& plan, Ranked ranked) {
  const auto [entry, is_new] = by_plan_.try_emplace(plan, ranked);
  if (!is_new && before(ranked, entry->second)) entry->second = std::move(ranked);
  if (by_plan_.size() > 2 * most_) shrink();
}

std::vector<std::pair<std::string, Ranked>> Ranking::sorted() const {
  std::vector<std::pair<std::string, Ranked>> out(by_plan_.begin(), by_plan_.end());
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return a.second.score != b.second.score ? a.second.score > b.second.score : a.first < b.first;
  });
  return out;
}

void Ranking::shrink() {
  auto best = sorted();
  best.resize(most_);
  least_ = best.back().second.score;
  by_plan_ = std::map<std::string, Ranked>(best.begin(), best.end());
}

std::vector<Ranked> Ranking::best() const {
  std::vector<Ranked> out;
  for (auto& [plan, ranked] : sorted()) {
    if (out.size() < most_) out.push_back(std::move(ranked));
  }
  return out;
}

std::vector<Ranked> Ranking::different(std::size_t count) const {
  auto best = sorted();
  if (best.size() > most_) best.resize(most_);
  std::vector<Ranked> out, others;
  const auto rects = [&](const Ranked& r) { return on_board(r.block, gap_, items_, r.board); };
  for (const auto& by_plan : best) {
    if (out.size() == count) return out;
    const Ranked& ranked = by_plan.second;
    const bool is_like_another = std::any_of(out.begin(), out.end(), [&](const Ranked& chosen) {
      return coincidence(rects(chosen), chosen.board, rects(ranked), ranked.board) >= alike_enough;
    });
    (is_like_another ? others : out).push_back(ranked);
  }
  for (const Ranked& ranked : others) {
    if (out.size() < count) out.push_back(ranked);
  }
  return out;
}

}  // namespace mullion::suggest
