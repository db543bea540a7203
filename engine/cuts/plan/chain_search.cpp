#include "engine/cuts/plan/chain_search.h"

#include <algorithm>

namespace mullion {
namespace {

// To be kept wherever it can be: dearer than any plan.
constexpr Units start_on_cut = units_per_second * 100'000'000;

int group_states(const std::vector<int>& group) {
  return (1 << group.size()) - 1;
}

int largest_group(const std::array<Groups, 4>& chains) {
  std::size_t most = 1;
  for (const Groups& chain : chains) {
    for (const auto& group : chain) most = std::max(most, group.size());
  }
  return static_cast<int>(most);
}

}  // namespace

std::int64_t ChainSearch::size(const std::array<Groups, 4>& chains, std::int64_t limit) {
  std::int64_t size = std::int64_t{4} * largest_group(chains);
  for (const Groups& chain : chains) {
    std::int64_t local = 1;
    for (const auto& group : chain) {
      if (group.size() > 20) return limit + 1;
      local += group_states(group);
    }
    if (size > limit / local) return limit + 1;
    size *= local;
  }
  return size;
}

ChainSearch::ChainSearch(const std::vector<OrderItem>& items, const OrderCost& cost,
                         const std::array<Groups, 4>& chains)
    : items_(items), cost_(cost), chains_(chains), spots_(items.size()) {
  group_size_ = largest_group(chains);
  slots_ = 4 * group_size_;
  for (std::size_t edge = 0; edge < 4; ++edge) {
    int local = 0;
    for (const auto& group : chains[edge]) {
      const int end = local + group_states(group);
      for (std::size_t bit = 0; bit < group.size(); ++bit) {
        spots_[static_cast<std::size_t>(group[bit])] = {static_cast<int>(edge), local, end,
                                                        static_cast<int>(bit)};
      }
      local = end;
    }
    local_count_[edge] = local + 1;
    weight_[edge] = states_;
    states_ *= local + 1;
  }
  last_.resize(static_cast<std::size_t>(slots_));
  cells_.resize(static_cast<std::size_t>(states_ * slots_));
}

void ChainSearch::decode(std::int64_t state) {
  for (std::size_t edge = 0; edge < 4; ++edge) {
    local_[edge] = static_cast<int>(state % local_count_[edge]);
    state /= local_count_[edge];
  }
}

bool ChainSearch::is_cut(int item) const {
  const Spot& spot = spots_[static_cast<std::size_t>(item)];
  if (spot.edge < 0) return cut_before_[static_cast<std::size_t>(item)];
  const int local = local_[static_cast<std::size_t>(spot.edge)];
  if (local >= spot.end) return true;
  return local >= spot.first && ((local - spot.first) >> spot.bit & 1) != 0;
}

bool ChainSearch::may_be_next(int item) const {
  const Spot& spot = spots_[static_cast<std::size_t>(item)];
  const int local = local_[static_cast<std::size_t>(spot.edge)];
  return local >= spot.first && local < spot.end && !is_cut(item);
}

int ChainSearch::item_at(int slot) const {
  const auto edge = static_cast<std::size_t>(slot / group_size_);
  const auto bit = static_cast<std::size_t>(slot % group_size_);
  const std::vector<int>* last = nullptr;
  int local = 0;
  for (const auto& group : chains_[edge]) {
    if (local_[edge] <= local) break;
    last = &group;
    local += group_states(group);
  }
  if (last == nullptr || bit >= last->size() || !is_cut((*last)[bit])) return -1;
  return (*last)[bit];
}

Units ChainSearch::cost_now(int item) const {
  const OrderItem& it = items_[static_cast<std::size_t>(item)];
  Units cost = cost_.own(item);
  for (const int mark : it.marks) {
    if (mark < 0 || !is_cut(mark)) cost += cost_.pencil_line();
  }
  for (const int other : it.not_after) {
    if (is_cut(other)) cost += start_on_cut;
  }
  return cost;
}

void ChainSearch::list_next() {
  next_.clear();
  for (std::size_t edge = 0; edge < 4; ++edge) {
    int local = 0;
    for (const auto& group : chains_[edge]) {
      const int end = local + group_states(group);
      if (local_[edge] < end) {
        for (const int item : group) {
          if (may_be_next(item)) next_.push_back(item);
        }
        break;
      }
      local = end;
    }
  }
}

void ChainSearch::extend_to(int item, std::int64_t state, const std::vector<PartialOrder>& before) {
  const Spot& spot = spots_[static_cast<std::size_t>(item)];
  const std::int64_t after =
      state + weight_[static_cast<std::size_t>(spot.edge)] * (std::int64_t{1} << spot.bit);
  const int slot = spot.edge * group_size_ + spot.bit;
  Cell& cell = cells_[static_cast<std::size_t>(after * slots_ + slot)];
  const Units now = cost_now(item);
  const auto offer = [&](Units cost, int from) {
    if (cost < cell.cost) cell = {cost, from};
  };
  if (state == 0) {
    if (before.empty()) offer(cost_.first(item) + now, -1);
    for (std::size_t i = 0; i < before.size(); ++i) {
      offer(before[i].cost + cost_.step(before[i].last, item) + now, static_cast<int>(i));
    }
    return;
  }
  for (int from = 0; from < slots_; ++from) {
    const Cell& earlier = cells_[static_cast<std::size_t>(state * slots_ + from)];
    if (earlier.cost == never) continue;
    offer(earlier.cost + cost_.step(last_[static_cast<std::size_t>(from)], item) + now, from);
  }
}

std::vector<int> ChainSearch::trace(std::int64_t state, int slot,
                                    const std::vector<PartialOrder>& before) {
  std::vector<int> reversed;
  while (state > 0) {
    decode(state);
    const int item = item_at(slot);
    const Spot& spot = spots_[static_cast<std::size_t>(item)];
    const int from = cells_[static_cast<std::size_t>(state * slots_ + slot)].from;
    reversed.push_back(item);
    state -= weight_[static_cast<std::size_t>(spot.edge)] * (std::int64_t{1} << spot.bit);
    slot = from;
  }
  std::vector<int> items;
  if (slot >= 0) items = before[static_cast<std::size_t>(slot)].items;
  items.insert(items.end(), reversed.rbegin(), reversed.rend());
  return items;
}

std::vector<PartialOrder> ChainSearch::run(const std::vector<PartialOrder>& before) {
  cut_before_.assign(items_.size(), false);
  if (!before.empty()) {
    for (const int item : before.front().items) cut_before_[static_cast<std::size_t>(item)] = true;
  }
  for (std::int64_t state = 0; state < states_; ++state) {
    decode(state);
    list_next();
    for (int slot = 0; slot < slots_; ++slot) last_[static_cast<std::size_t>(slot)] = item_at(slot);
    for (const int item : next_) extend_to(item, state, before);
  }
  std::vector<PartialOrder> out;
  const std::int64_t all = states_ - 1;
  for (int slot = 0; slot < slots_; ++slot) {
    const Cell& cell = cells_[static_cast<std::size_t>(all * slots_ + slot)];
    if (cell.cost == never) continue;
    decode(all);
    const int last = item_at(slot);
    out.push_back({last, cell.cost, trace(all, slot, before)});
  }
  return out;
}

}  // namespace mullion
