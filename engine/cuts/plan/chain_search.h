#pragma once

// Dynamic programming over four chains of groups: the cuts at each edge come group after group,
// in any order within a group.

#include <array>
#include <vector>

#include "engine/cuts/plan/order_cost.h"

namespace mullion {

// A way to have cut some items, ending with `last`.
struct PartialOrder {
  int last = -1;
  Units cost = 0;
  std::vector<int> items;
};

using Groups = std::vector<std::vector<int>>;

class ChainSearch {
 public:
  ChainSearch(const std::vector<OrderItem>& items, const OrderCost& cost,
              const std::array<Groups, 4>& chains);

  // The number of states times the cuts that may have come last; at most `limit` + 1.
  static std::int64_t size(const std::array<Groups, 4>& chains, std::int64_t limit);

  // Goes on from each of `before` (from nothing where it is empty), and gives the best order for
  // each cut that can be the last.
  std::vector<PartialOrder> run(const std::vector<PartialOrder>& before);

 private:
  static constexpr Units never = INT64_MAX / 4;
  struct Spot {  // of an item in the chains
    int edge = -1;
    int first = 0, end = 0;  // local states of its group, and of the next one
    int bit = 0;
  };
  struct Cell {
    Units cost = never;
    int from = -1;  // slot of the cut before; for the first cut: the index in `before`
  };

  bool is_cut(int item) const;
  bool may_be_next(int item) const;
  int item_at(int slot) const;
  Units cost_now(int item) const;
  void decode(std::int64_t state);
  void extend_to(int item, std::int64_t state, const std::vector<PartialOrder>& before);
  void list_next();
  std::vector<int> trace(std::int64_t state, int slot, const std::vector<PartialOrder>& before);

  const std::vector<OrderItem>& items_;
  const OrderCost& cost_;
  const std::array<Groups, 4>& chains_;
  std::vector<Spot> spots_;
  std::array<int, 4> local_count_{};
  std::array<std::int64_t, 4> weight_{};
  std::array<int, 4> local_{};
  std::vector<bool> cut_before_;
  std::vector<int> next_;  // items that may be cut next
  std::vector<int> last_;  // per slot: the item that was cut last
  std::int64_t states_ = 1;
  int group_size_ = 1, slots_ = 4;
  std::vector<Cell> cells_;
};

}  // namespace mullion
