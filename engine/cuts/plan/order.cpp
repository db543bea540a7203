#include "engine/cuts/plan/order.h"

#include <algorithm>

#include "engine/cuts/plan/chain_search.h"

namespace mullion {
namespace {

using Chains = std::array<Groups, 4>;

// Within one distance, smaller: what is left over is cut along the rail.
constexpr std::int64_t most_states_of_a_distance = 20'000;

enum class Rail { near_to_far, far_to_near };

std::vector<int> farthest_first(const std::vector<OrderItem>& items) {
  std::vector<int> order(items.size());
  for (std::size_t i = 0; i < items.size(); ++i) order[i] = static_cast<int>(i);
  const auto at = [&](int i) -> const OrderItem& { return items[static_cast<std::size_t>(i)]; };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    if (at(a).distance != at(b).distance) return at(a).distance > at(b).distance;
    return at(a).along < at(b).along;
  });
  return order;
}

Chains chains_of(const std::vector<OrderItem>& items, const std::vector<int>& sorted) {
  Chains chains;
  for (const int i : sorted) {
    const OrderItem& item = items[static_cast<std::size_t>(i)];
    Groups& chain = chains[static_cast<std::size_t>(item.edge)];
    const bool same =
        !chain.empty() &&
        items[static_cast<std::size_t>(chain.back().front())].distance == item.distance;
    if (same) {
      chain.back().push_back(i);
    } else {
      chain.push_back({i});
    }
  }
  return chains;
}

Chains one_by_one(const Chains& chains, Rail rail) {
  Chains out;
  for (std::size_t edge = 0; edge < chains.size(); ++edge) {
    for (std::vector<int> group : chains[edge]) {
      if (rail == Rail::far_to_near) std::reverse(group.begin(), group.end());
      for (const int item : group) out[edge].push_back({item});
    }
  }
  return out;
}

// All cuts at an edge in any order.
Chains unchained(const Chains& chains) {
  Chains out;
  for (std::size_t edge = 0; edge < chains.size(); ++edge) {
    std::vector<int> all;
    for (const auto& group : chains[edge]) all.insert(all.end(), group.begin(), group.end());
    if (!all.empty()) out[edge].push_back(std::move(all));
  }
  return out;
}

class Search {
 public:
  Search(const std::vector<OrderItem>& items, const OrderCost& cost) : items_(items), cost_(cost) {}

  std::vector<PartialOrder> all_at_once(const Chains& chains) {
    return ChainSearch(items_, cost_, chains).run({});
  }

  std::vector<PartialOrder> by_distance(const std::vector<int>& sorted) {
    std::vector<PartialOrder> sofar;
    for (std::size_t i = 0; i < sorted.size();) {
      std::vector<int> level;
      const Length distance = items_[static_cast<std::size_t>(sorted[i])].distance;
      while (i < sorted.size() &&
             items_[static_cast<std::size_t>(sorted[i])].distance == distance) {
        level.push_back(sorted[i++]);
      }
      sofar = one_distance(chains_of(items_, level), sofar);
    }
    return sofar;
  }

 private:
  std::vector<PartialOrder> one_distance(const Chains& chains,
                                         const std::vector<PartialOrder>& before) {
    if (ChainSearch::size(chains, most_states_of_a_distance) <= most_states_of_a_distance) {
      return ChainSearch(items_, cost_, chains).run(before);
    }
    std::vector<PartialOrder> out;
    for (const Rail rail : {Rail::near_to_far, Rail::far_to_near}) {
      const Chains singles = one_by_one(chains, rail);
      for (PartialOrder& order : ChainSearch(items_, cost_, singles).run(before)) {
        out.push_back(std::move(order));
      }
    }
    return out;
  }

  const std::vector<OrderItem>& items_;
  const OrderCost& cost_;
};

bool starts_on_cut(const std::vector<OrderItem>& items, const std::vector<int>& order) {
  std::vector<bool> cut(items.size(), false);
  for (const int i : order) {
    for (const int other : items[static_cast<std::size_t>(i)].not_after) {
      if (cut[static_cast<std::size_t>(other)]) return true;
    }
    cut[static_cast<std::size_t>(i)] = true;
  }
  return false;
}

}  // namespace

const Order& OrderMemo::best(const std::vector<OrderItem>& items, const HandlingTimes& times,
                             int quantity, bool farther_first) {
  for (const auto& [of, order] : known_) {
    if (of == items) return order;
  }
  known_.emplace_back(items, best_order(items, times, quantity, farther_first));
  return known_.back().second;
}

std::int64_t handling_of(const std::vector<OrderItem>& items, const std::vector<int>& order,
                         const HandlingTimes& times, int quantity) {
  const OrderCost cost(items, times, quantity);
  Units total = 0;
  for (std::size_t k = 0; k < order.size(); ++k) {
    total += k == 0 ? cost.first(order[k]) : cost.step(order[k - 1], order[k]);
    total += cost.own(order[k]);
  }
  return total / units_per_second;
}

std::int64_t least_handling(const std::vector<OrderItem>& items, const HandlingTimes& times,
                            int quantity) {
  return items.empty() ? 0 : OrderCost(items, times, quantity).floor() / units_per_second;
}

std::int64_t cost_of(const std::vector<OrderItem>& items, const std::vector<int>& order,
                     const HandlingTimes& times, int quantity) {
  const OrderCost cost(items, times, quantity);
  std::vector<bool> cut(items.size(), false);
  Units total = 0;
  for (std::size_t k = 0; k < order.size(); ++k) {
    total += k == 0 ? cost.first(order[k]) : cost.step(order[k - 1], order[k]);
    total += cost.own(order[k]);
    for (const int mark : items[static_cast<std::size_t>(order[k])].marks) {
      if (mark < 0 || !cut[static_cast<std::size_t>(mark)]) total += cost.pencil_line();
    }
    cut[static_cast<std::size_t>(order[k])] = true;
  }
  return total / units_per_second;
}

Order best_order(const std::vector<OrderItem>& items, const HandlingTimes& times, int quantity,
                 bool farther_first) {
  Order out;
  if (items.empty()) return out;
  const OrderCost cost(items, times, quantity);
  const std::vector<int> sorted = farthest_first(items);
  const Chains chains = chains_of(items, sorted);
  Search search(items, cost);
  std::vector<PartialOrder> found;
  const Chains any_order = unchained(chains);
  if (!farther_first && ChainSearch::size(any_order, most_free_states) <= most_free_states) {
    found = search.all_at_once(any_order);
  } else if (ChainSearch::size(chains, most_states) <= most_states) {
    out.exact = farther_first;
    found = search.all_at_once(chains);
  } else {
    out.exact = false;
    found = search.by_distance(sorted);
  }
  const PartialOrder& best = *std::min_element(
      found.begin(), found.end(), [](const auto& a, const auto& b) { return a.cost < b.cost; });
  out.items = best.items;
  out.starts_on_cut = starts_on_cut(items, out.items);
  out.seconds = cost_of(items, out.items, times, quantity);
  out.bound = out.exact ? out.seconds : cost.floor() / units_per_second;
  return out;
}

}  // namespace mullion
