#include "engine/suggest/choosing.h"

#include <algorithm>

#include "engine/suggest/composition.h"
#include "engine/suggest/difference.h"

namespace mullion::suggest {
namespace {

// The best of each plan, by falling score.
std::vector<Ranked> best_of_each_plan(std::vector<Ranked> hung) {
  std::map<std::string, Ranked> by_plan;
  for (Ranked& one : hung) {
    const auto [entry, is_new] = by_plan.try_emplace(plan_key(one.block), one);
    if (!is_new && one.score > entry->second.score) entry->second = std::move(one);
  }
  std::vector<Ranked> out;
  for (auto& entry : by_plan) out.push_back(std::move(entry.second));
  std::stable_sort(out.begin(), out.end(),
                   [](const Ranked& a, const Ranked& b) { return a.score > b.score; });
  return out;
}

}  // namespace

bool is_tidy(const Criteria& criteria) {
  constexpr double flush = 0.95, half_flush = 0.5, mirrored = 0.85, even = 0.75;  // our own figures
  return criteria.flush >= flush || criteria.alignment >= 1 ||
         (criteria.symmetry >= mirrored && criteria.bars >= even && criteria.flush >= half_flush);
}

std::vector<Ranked> chosen(std::vector<Ranked> hung, std::size_t count, Length gap,
                           std::size_t items, std::size_t at_least) {
  const std::vector<Ranked> best = best_of_each_plan(std::move(hung));
  std::vector<Ranked> out;
  std::vector<bool> is_taken(best.size(), false);
  const auto rects = [&](const Ranked& r) { return on_board(r.block, gap, items, r.board); };
  const auto is_like_another = [&](const Ranked& one) {
    return std::any_of(out.begin(), out.end(), [&](const Ranked& other) {
      return coincidence(rects(other), other.board, rects(one), one.board) >= alike_enough;
    });
  };
  // Not much longer than it is wide, unless the board is given so.
  const auto hangs_well = [&](const Ranked& one) {
    constexpr double well_enough = 0.3;
    return one.criteria.shape >= std::min(well_enough, best.front().criteria.shape);
  };
  // An oval is a ring that follows the board.
  const auto kind_of = [&](const Ranked& one) {
    const Composition composition = composition_of(one.block, gap, items);
    return composition == Composition::oval ? Composition::ring : composition;
  };
  const auto take = [&](const auto& is_wanted) {
    for (std::size_t i = 0; i < best.size() && out.size() < count; ++i) {
      if (is_taken[i] || !is_wanted(best[i])) continue;
      is_taken[i] = true;
      out.push_back(best[i]);
    }
  };
  // Not with one bar much narrower than the others, which leaves holes elsewhere.
  const auto is_whole = [](const Ranked& one) { return one.criteria.bars >= even_enough; };
  const auto is_wanted = [&](const Ranked& one) {
    return hangs_well(one) && is_whole(one) && is_tidy(one.criteria) && !is_like_another(one);
  };
  const auto is_good = [&](const Ranked& one) {
    return one.score >= good_enough * best.front().score && is_wanted(one);
  };
  const auto of_its_kind = [&](const Ranked& one) {
    return std::count_if(out.begin(), out.end(),
                         [&](const Ranked& other) { return kind_of(other) == kind_of(one); });
  };
  constexpr std::ptrdiff_t most_of_a_kind = 2;
  take([&](const Ranked& one) { return is_good(one) && of_its_kind(one) == 0; });
  take([&](const Ranked& one) { return is_good(one) && of_its_kind(one) < most_of_a_kind; });
  take([&](const Ranked& one) { return is_wanted(one) && of_its_kind(one) < most_of_a_kind; });
  const auto take_if_few = [&](const auto& may_be_taken) {
    take([&](const Ranked& one) { return out.size() < at_least && may_be_taken(one); });
  };
  const auto hangs = [&](const Ranked& one) {
    return hangs_well(one) && is_whole(one) && !is_like_another(one);
  };
  take([&](const Ranked& one) {
    return hangs(one) && of_its_kind(one) == 0 && one.score >= as_good * best.front().score;
  });
  take_if_few([&](const Ranked& one) { return hangs(one) && of_its_kind(one) == 0; });
  take_if_few(hangs);
  take_if_few([&](const Ranked& one) { return hangs_well(one) && !is_like_another(one); });
  take_if_few([&](const Ranked& one) { return !is_like_another(one); });
  take_if_few([](const Ranked&) { return true; });
  std::stable_sort(out.begin(), out.end(),
                   [](const Ranked& a, const Ranked& b) { return a.score > b.score; });
  return out;
}

}  // namespace mullion::suggest
