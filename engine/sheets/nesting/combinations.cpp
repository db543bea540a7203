#include "engine/sheets/nesting/combinations.h"

#include <algorithm>
#include <limits>

namespace mullion {
namespace {

constexpr std::int64_t most_steps = 2'000'000;

struct Search {
  const NestingProblem& problem;
  std::int64_t least, below;
  double area;
  std::size_t limit;
  std::vector<StockCombination> found;
  std::int64_t steps = 0;
  StockCombination present;

  double sheet_area(std::size_t stock) const {
    const StockKind& kind = problem.stock[stock];
    return to_millimetres(kind.width) * to_millimetres(kind.height);
  }

  // False once there are too many.
  bool from(std::size_t stock, double covered) {
    if (++steps > most_steps || found.size() > limit) return false;
    if (stock == problem.stock.size()) {
      if (present.cost >= least && covered >= area) found.push_back(present);
      return true;
    }
    const StockKind& kind = problem.stock[stock];
    int most = kind.on_hand.value_or(std::numeric_limits<int>::max() / 2);
    if (kind.price == 0) {
      if (!kind.on_hand) return false;
      present.counts.push_back(most);
      const bool more = from(stock + 1, covered + most * sheet_area(stock));
      present.counts.pop_back();
      return more;
    }
    const std::int64_t affordable = (below - 1 - present.cost) / kind.price;
    most = static_cast<int>(std::min<std::int64_t>(most, affordable));
    bool more = true;
    for (int count = 0; more && count <= most; ++count) {
      present.counts.push_back(count);
      present.cost += count * kind.price;
      more = from(stock + 1, covered + count * sheet_area(stock));
      present.cost -= count * kind.price;
      present.counts.pop_back();
    }
    return more;
  }
};

}  // namespace

std::optional<std::vector<StockCombination>> stock_combinations(const NestingProblem& problem,
                                                                std::int64_t least,
                                                                std::int64_t below, double area,
                                                                std::size_t limit) {
  if (below <= least) return std::vector<StockCombination>{};
  Search search{problem, least, below, area, limit, {}, 0, {}};
  if (!search.from(0, 0.0) || search.found.size() > limit) return std::nullopt;
  std::stable_sort(
      search.found.begin(), search.found.end(),
      [](const StockCombination& a, const StockCombination& b) { return a.cost < b.cost; });
  return search.found;
}

}  // namespace mullion
