#include "engine/cuts/plan/items.h"

#include <algorithm>

namespace mullion {
namespace {

class Items {
 public:
  Items(const StageRequest& request, const PlannedLines* above)
      : request_(request), above_(above) {}

  std::vector<Item> make() {
    for (const StraightLine& line : request_.board.lines.straight) out_.push_back(lay(line));
    for (std::size_t i = 0; i < out_.size(); ++i) set(out_[i], i);
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

  void set(Item& item, std::size_t index) {
    const CutterProfile& cutter = request_.cutter;
    OrderItem& order = item.order;
    const auto guide = guide_of(order.distance, index);
    order.freehand = !guide;
    if (guide) {
      order.settings.guide = guide->guide;
      order.settings.block = guide->block;
    }
    order.near_mark = item.near.line - item.near.over_cut + cutter.mark_lead;
    order.far_mark = item.far.line + item.far.over_cut - cutter.mark_lead;
    const bool only_far = request_.way == Way::one_stop && !cutter.near_stop;
    const bool only_near = request_.way == Way::one_stop && !only_far;
    if (request_.way != Way::pencilled) {
      if (!only_far) order.settings.near_stop = stop_for(cutter.near_stop, order.near_mark);
      if (!only_near) order.settings.far_stop = stop_for(cutter.far_stop, order.far_mark);
    }
    bring_by_eye(item.near, order.settings.near_stop, order);
    bring_by_eye(item.far, order.settings.far_stop, order);
  }

  std::optional<GuideSetting> guide_of(Length distance, std::size_t index) const {
    if (above_ != nullptr && above_->items[index].settings.guide) {
      const auto same = guide_with(request_.cutter, distance, above_->items[index].settings.block);
      if (same) return same;
    }
    return guide_for(request_.cutter, distance);
  }

  void bring_by_eye(ItemEnd& end, const std::optional<Length>& stop, OrderItem& order) const {
    if (stop) return;
    end.by = EndBy::pencil;
    ++order.eye_ends;
    if (request_.way != Way::pencilled) order.marks.push_back(end.neighbour);
  }

  // Where the blade enters, and what lines pass there; a corner of the line itself is no such
  // place.
  std::vector<int> lines_under_start(const Item& item) const {
    const Point start = beyond(item.far.at, item.near.at, item.far.over_cut);
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

std::vector<Item> items_of(const StageRequest& request, const PlannedLines* above) {
  return Items(request, above).make();
}

}  // namespace mullion
