#pragma once

// The order of a layer's straight cuts: the quickest by the cost model, under the rules that
// always hold.
//
// Cost of going from one cut to the next, in seconds of HandlingTimes, for a run of n blanks: a
// guide or stop that is set otherwise is moved once for the run. Where anything is set otherwise
// and n > 1, every blank is taken up again (re-chuck); a single blank is turned, and taken up again
// only where the guide moves. Where nothing is set otherwise, every blank is turned. Every cut
// costs its own time n times, an end that is brought to a line by eye its time, a freehand cut the
// lining up; a line that must be pencilled and is not yet cut costs a pencil line. (Once an order
// is found, a plan counts the strokes that are drawn.) A spacer that is put in or taken out for a
// set-up is changed once for the run.
//
// Rules. With one edge at the guide, the lines farther in are cut first, so that the board between
// the guide and the blade is whole; hence, too, inner openings come before outer ones and each
// setting is made once for that edge. A cutter's profile can switch this rule off
// (`farther_first`). No cut starts on a line that is already cut through.
//
// The search is dynamic programming over what has been cut and the last cut: per edge the cuts
// are a chain of groups of equal distance, so the states are few. Where they are more than
// `most_states`, the distances are taken one by one, farthest in first, each exactly or, failing
// that, along the rail; then `bound` is a proven floor of the cost, else it is the cost itself.

#include <cstdint>
#include <deque>
#include <vector>

#include "engine/cuts/board.h"
#include "engine/cuts/plan/settings.h"

namespace mullion {

struct OrderItem {
  BoardEdge edge = BoardEdge::top;
  Length distance;  // of the line from the edge at the guide
  Length along;     // of the cut's end from the near edge
  Length length;
  Settings settings;
  Length near_mark, far_mark;  // where the head's mark stands at the ends
  bool freehand = false;
  int eye_ends = 0;
  // For each end by eye: the item whose line marks it, or -1 where it must be pencilled anyway.
  std::vector<int> marks;
  std::vector<int> not_after;  // items on whose line this cut would start
  friend bool operator==(const OrderItem&, const OrderItem&) = default;
};

struct Order {
  std::vector<int> items;
  std::int64_t seconds = 0, bound = 0;
  bool exact = true;
  bool starts_on_cut = false;  // the rule could not be kept
};

inline constexpr std::int64_t most_states = 250'000;
// Where farther lines need not come first, the states are more for as many lines.
inline constexpr std::int64_t most_free_states = 1'500'000;

Order best_order(const std::vector<OrderItem>& items, const HandlingTimes& times, int quantity,
                 bool farther_first = true);

// Ways of working that set the same for every line have the same best order: it is looked for once.
// Times, quantity and rule must be the same for all.
class OrderMemo {
 public:
  const Order& best(const std::vector<OrderItem>& items, const HandlingTimes& times, int quantity,
                    bool farther_first);

 private:
  std::deque<std::pair<std::vector<OrderItem>, Order>> known_;
};

// What an order costs without the pencil lines.
std::int64_t handling_of(const std::vector<OrderItem>& items, const std::vector<int>& order,
                         const HandlingTimes& times, int quantity);
// No order of the items takes less, pencil lines apart.
std::int64_t least_handling(const std::vector<OrderItem>& items, const HandlingTimes& times,
                            int quantity);

// What an order given from elsewhere costs by the same model.
std::int64_t cost_of(const std::vector<OrderItem>& items, const std::vector<int>& order,
                     const HandlingTimes& times, int quantity);

}  // namespace mullion
