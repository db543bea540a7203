#include "engine/cuts/plan/order_cost.h"

#include <algorithm>

namespace mullion {
namespace {

bool guide_differs(const Settings& from, const Settings& to) {
  return to.guide && from.guide != to.guide;
}

int spacers_that_differ(const Settings& from, const Settings& to) {
  return (to.guide && from.block != to.block ? 1 : 0) + (from.arm_block != to.arm_block ? 1 : 0);
}

int stops_that_differ(const Settings& from, const Settings& to) {
  return (to.near_stop && from.near_stop != to.near_stop ? 1 : 0) +
         (to.far_stop && from.far_stop != to.far_stop ? 1 : 0);
}

int turns_between(BoardEdge from, BoardEdge to) {
  const int turns = quarter_turns(from, to);
  return std::min(turns, 4 - turns);
}

}  // namespace

OrderCost::OrderCost(const std::vector<OrderItem>& items, const HandlingTimes& times, int quantity)
    : items_(items), times_(times), quantity_(quantity), pencil_(for_all(times.pencil_line)) {
  steps_.resize(items.size() * items.size());
  for (std::size_t i = 0; i < items.size(); ++i) {
    own_.push_back(compute_own(items[i]));
    for (std::size_t j = 0; j < items.size(); ++j) {
      steps_[i * items.size() + j] = compute_step(items[i], items[j]);
    }
  }
}

Units OrderCost::compute_own(const OrderItem& item) const {
  Units cost = for_all(times_.bevel_cut) + for_all(times_.by_eye) * item.eye_ends;
  if (item.freehand) cost += for_all(times_.freehand_line);
  return cost;
}

Units OrderCost::compute_step(const OrderItem& from, const OrderItem& to) const {
  const bool guide = guide_differs(from.settings, to.settings);
  const int stops = stops_that_differ(from.settings, to.settings);
  Units cost = to.length < from.length ? 1 : 0;
  cost += seconds((guide ? times_.guide_move : 0) + stops * times_.stop_move +
                  spacers_that_differ(from.settings, to.settings) * times_.gauge_change);
  const Units turning = for_all(times_.quarter_turn) * turns_between(from.edge, to.edge);
  if (quantity_ > 1 && !(from.settings == to.settings)) return cost + for_all(times_.rechuck);
  return cost + turning + (guide ? for_all(times_.rechuck) : 0);
}

Units OrderCost::first(int item) const {
  const Settings& settings = items_[static_cast<std::size_t>(item)].settings;
  const int stops = stops_that_differ(Settings{}, settings);
  return seconds((settings.guide ? times_.guide_move : 0) + stops * times_.stop_move +
                 spacers_that_differ(Settings{}, settings) * times_.gauge_change) +
         for_all(times_.rechuck);
}

Units OrderCost::floor() const {
  std::set<Length> guides;
  std::set<Length> near_stops, far_stops;
  std::set<BoardEdge> edges;
  Units cost = for_all(times_.rechuck);
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const Settings& s = items_[i].settings;
    cost += own_[i];
    if (s.guide) guides.insert(*s.guide);
    if (s.near_stop) near_stops.insert(*s.near_stop);
    if (s.far_stop) far_stops.insert(*s.far_stop);
    edges.insert(items_[i].edge);
  }
  const auto count = [](const auto& set) { return static_cast<std::int64_t>(set.size()); };
  cost += seconds(count(guides) * times_.guide_move +
                  (count(near_stops) + count(far_stops)) * times_.stop_move);
  if (quantity_ == 1 && !edges.empty()) cost += for_all(times_.quarter_turn) * (count(edges) - 1);
  return cost;
}

}  // namespace mullion
