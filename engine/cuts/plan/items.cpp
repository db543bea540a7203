#include "engine/cuts/plan/items.h"

#include <algorithm>
#include <map>

namespace mullion {
namespace {

class Items {
 public:
  Items(const StageRequest& request, const PlannedLines* above)
      : request_(request), above_(above) {}

  std::vector<Item> make() {
    for (const StraightLine& line : request_.board.lines.straight) out_.push_back(lay(line));
    for (Item& item : out_) find_marks(item);
    if (spaces_across(request_.way)) space_across();
    for (std::size_t i = 0; i < out_.size(); ++i) set_guide(out_[i].order, i);
    for (Item& item : out_) set_stops(item.order);
    if (spaces_along(request_.way)) space_along();
    for (Item& item : out_) bring_by_eye(item);
    for (Item& item : out_) item.order.not_after = lines_under_start(item);
    return std::move(out_);
  }

 private:
  ItemEnd end_at(const LineEnd& end, BoardEdge near) const {
    return {end.at, distance_from(near, end.at, request_.board.edges), end.over_cut, end.neighbour,
            EndBy::stop};
  }

  Item lay(const StraightLine& line) const {
    Item item;
    item.window = line.window;
    item.kept = line.kept;
    item.order.edge = edge_at_guide(line.kept, request_.cutter.lean);
    item.order.distance = distance_from(item.order.edge, line.ends[0].at, request_.board.edges);
    const BoardEdge near = near_edge(item.order.edge, request_.cutter.side);
    item.far = end_at(line.ends[0], near);
    item.near = end_at(line.ends[1], near);
    if (item.far.line < item.near.line) std::swap(item.far, item.near);
    item.order.along = item.near.line;
    item.order.length = item.far.line - item.near.line;
    return item;
  }

  void find_marks(Item& item) const {
    item.order.near_mark = item.near.line - item.near.over_cut + near_lead(request_.cutter);
    item.order.far_mark = item.far.line + item.far.over_cut - far_lead(request_.cutter);
  }

  void set_guide(OrderItem& order, std::size_t index) const {
    if (order.settings.guide) return;
    const auto guide = guide_of(order.distance, index);
    order.freehand = !guide;
    if (!guide) return;
    order.settings.guide = guide->guide;
    order.settings.block = guide->block;
  }

  void set_stops(OrderItem& order) const {
    const CutterProfile& cutter = request_.cutter;
    const Way way = request_.way;
    if (way < Way::one_stop) return;
    // One stop is that at which a cut ends.
    const bool pulled = cutter.stroke == Stroke::pull;
    const bool only_far = way == Way::one_stop && (pulled ? !cutter.near_stop : !!cutter.far_stop);
    const bool only_near = way == Way::one_stop && !only_far;
    Settings& settings = order.settings;
    if (!only_far) settings.near_stop = stop_for(cutter.near_stop, order.near_mark);
    if (!only_near) settings.far_stop = stop_for(cutter.far_stop, order.far_mark);
    drop_crossing(settings);
  }

  // The head does not fit between stops that would cross: the cut then starts by eye.
  void drop_crossing(Settings& settings) const {
    if (!settings.near_stop || !settings.far_stop) return;
    if (*settings.near_stop < *settings.far_stop) return;
    const bool pulled = request_.cutter.stroke == Stroke::pull;
    (pulled ? settings.far_stop : settings.near_stop).reset();
  }

  Length least_spacer() const {
    return request_.cutter.scale.unit == Unit::inch ? sixty_fourths(32) : millimetres(12);
  }

  // One setting of the guide for the farthest line that it reaches; for the lines nearer the edge a
  // gauge piece between guide and board. One that would be too narrow to hold gets a setting.
  void space_across() {
    std::vector<Item*> by_distance;
    for (Item& item : out_) by_distance.push_back(&item);
    std::stable_sort(by_distance.begin(), by_distance.end(), [](const Item* a, const Item* b) {
      return a->order.distance > b->order.distance;
    });
    std::optional<Length> base;
    for (Item* item : by_distance) {
      OrderItem& order = item->order;
      if (base && order.distance + least_spacer() <= *base) {
        order.settings.guide = base;
        order.settings.block = Block{*base - order.distance, false};
      } else if (guide_with(request_.cutter, order.distance, std::nullopt)) {
        base = order.settings.guide = order.distance;
      }
    }
  }

  // The same with the stops, for lines of one length: blocks between arm and board.
  void space_along() {
    std::map<Length, std::vector<OrderItem*>> by_length;
    for (Item& item : out_) {
      OrderItem& order = item.order;
      if (order.settings.near_stop && order.settings.far_stop) {
        by_length[order.far_mark - order.near_mark].push_back(&order);
      }
    }
    for (auto& [length, orders] : by_length) {
      std::stable_sort(orders.begin(), orders.end(), [](const OrderItem* a, const OrderItem* b) {
        return a->near_mark > b->near_mark;
      });
      const OrderItem* base = nullptr;
      for (OrderItem* order : orders) {
        if (base == nullptr || base->near_mark - order->near_mark < least_spacer()) {
          if (base == nullptr || base->near_mark != order->near_mark) base = order;
          continue;
        }
        order->settings.near_stop = base->settings.near_stop;
        order->settings.far_stop = base->settings.far_stop;
        order->settings.arm_block = base->near_mark - order->near_mark;
      }
    }
  }

  std::optional<GuideSetting> guide_of(Length distance, std::size_t index) const {
    if (above_ != nullptr && above_->items[index].settings.guide) {
      const auto same = guide_with(request_.cutter, distance, above_->items[index].settings.block);
      if (same) return same;
    }
    return guide_for(request_.cutter, distance);
  }

  void bring_by_eye(Item& item) const {
    const auto bring = [&](ItemEnd& end, const std::optional<Length>& stop) {
      if (stop) return;
      end.by = EndBy::pencil;
      ++item.order.eye_ends;
      if (request_.way >= Way::one_stop) item.order.marks.push_back(end.neighbour);
    };
    bring(item.near, item.order.settings.near_stop);
    bring(item.far, item.order.settings.far_stop);
  }

  // Where the blade enters, and what lines pass there; a corner of the line itself is no such
  // place.
  std::vector<int> lines_under_start(const Item& item) const {
    const bool pulled = request_.cutter.stroke == Stroke::pull;
    const ItemEnd &from = pulled ? item.far : item.near, &to = pulled ? item.near : item.far;
    const Point start = beyond(from.at, to.at, from.over_cut);
    std::vector<int> under;
    for (std::size_t i = 0; i < out_.size(); ++i) {
      const Item& other = out_[i];
      if (&other == &item) continue;
      const Point a = beyond(other.far.at, other.near.at, other.far.over_cut);
      const Point b = beyond(other.near.at, other.far.at, other.near.over_cut);
      if (lies_within(start, a, b)) under.push_back(static_cast<int>(i));
    }
    return under;
  }

  static bool lies_within(Point p, Point a, Point b) {
    if (a.x == b.x) {
      return p.x == a.x && p.y > std::min(a.y, b.y) && p.y < std::max(a.y, b.y);
    }
    return p.y == a.y && p.x > std::min(a.x, b.x) && p.x < std::max(a.x, b.x);
  }

  const StageRequest& request_;
  const PlannedLines* above_;
  std::vector<Item> out_;
};

}  // namespace

Length near_lead(const CutterProfile& cutter) {
  return cutter.stroke == Stroke::pull ? cutter.mark_lead : start_lead(cutter);
}

Length far_lead(const CutterProfile& cutter) {
  return cutter.stroke == Stroke::pull ? start_lead(cutter) : cutter.mark_lead;
}

bool spaces_along(Way way) {
  return way == Way::stop_blocks || way == Way::gauges;
}

bool spaces_across(Way way) {
  return way == Way::gauges;
}

std::vector<Item> items_of(const StageRequest& request, const PlannedLines* above) {
  return Items(request, above).make();
}

}  // namespace mullion
