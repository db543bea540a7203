#include "engine/cuts/plan/stage.h"

#include <algorithm>
#include <map>

#include "engine/cuts/plan/items.h"

namespace mullion {
namespace {

bool same_lines(const CutLines& a, const CutLines& b) {
  return std::equal(a.straight.begin(), a.straight.end(), b.straight.begin(), b.straight.end(),
                    [](const StraightLine& x, const StraightLine& y) {
                      return x.window == y.window && x.kept == y.kept;
                    });
}

// With one edge at the guide, farther lines first.
bool keeps_rule(const std::vector<OrderItem>& items, const std::vector<int>& order) {
  std::map<BoardEdge, Length> last;
  for (const int i : order) {
    const OrderItem& item = items[static_cast<std::size_t>(i)];
    const auto [at, is_new] = last.emplace(item.edge, item.distance);
    if (!is_new && item.distance > at->second) return false;
    at->second = item.distance;
  }
  return true;
}

std::optional<LayerShift> shift_between(const std::vector<OrderItem>& above,
                                        const std::vector<OrderItem>& below) {
  std::optional<LayerShift> shift;
  for (std::size_t i = 0; i < above.size(); ++i) {
    const OrderItem& a = above[i];
    const OrderItem& b = below[i];
    if (a.freehand != b.freehand || a.settings.block != b.settings.block) return std::nullopt;
    const LayerShift here{b.distance - a.distance, b.near_mark - a.near_mark};
    if (b.far_mark - a.far_mark != -here.stops) return std::nullopt;
    if (!shift) shift = here;
    if (here.guide != shift->guide || here.stops != shift->stops) return std::nullopt;
  }
  return shift;
}

class Planner {
 public:
  Planner(const StageRequest& request, const PlannedLines* above)
      : request_(request), next_cut_(request.first_cut), next_set_up_(request.first_set_up) {
    out_.lines.lines = &lines();
    if (above != nullptr && same_lines(*above->lines, lines())) above_ = above;
    items_ = items_of(request, above_);
    for (const Item& item : items_) out_.lines.items.push_back(item.order);
  }

  PlannedStage plan() {
    choose_order();
    number_of_.assign(items_.size(), 0);
    if (request_.way == Way::pencilled) {
      for (const Item& item : items_) line_of(item);
    }
    for (const int i : out_.lines.order) add_cut(items_[static_cast<std::size_t>(i)], i);
    add_skew_cuts();
    add_curves();
    add_times();
    return std::move(out_);
  }

 private:
  Stage& stage() { return out_.stage; }
  const CutLines& lines() const { return request_.board.lines; }
  const HandlingTimes& times() const { return request_.cutter.times; }

  void choose_order() {
    if (above_ != nullptr && keeps_rule(out_.lines.items, above_->order)) {
      out_.lines.order = above_->order;
      stage().same_order = true;
      stage().seconds = stage().bound =
          cost_of(out_.lines.items, above_->order, times(), request_.quantity);
      stage().shift = shift_between(above_->items, out_.lines.items);
      return;
    }
    const Order best = best_order(out_.lines.items, times(), request_.quantity);
    out_.lines.order = best.items;
    stage().seconds = best.seconds;
    stage().bound = best.bound;
    starts_on_cut_ = best.starts_on_cut;
  }

  int pencil_line(BoardEdge edge, Length distance, int window) {
    const auto key = std::make_tuple(window, edge, distance);
    const auto found = pencilled_.find(key);
    if (found != pencilled_.end()) return found->second;
    const int number = static_cast<int>(stage().pencil_lines.size()) + 1;
    stage().pencil_lines.push_back({number, edge, distance, openings(window)});
    pencilled_.emplace(key, number);
    return number;
  }

  int line_of(const Item& item) {
    return pencil_line(item.order.edge, item.order.distance, item.window);
  }

  const std::vector<int>& openings(int window) const {
    return request_.board.windows()[static_cast<std::size_t>(window)].openings;
  }

  CutEnd end_of(const Item& item, const ItemEnd& end, BoardEdge measured_from) {
    CutEnd out{end.line, end.over_cut, end.over_cut - request_.cutter.mark_lead, end.by, 0};
    if (out.by == EndBy::stop) return out;
    const int crossing =
        end.neighbour < 0 ? 0 : number_of_[static_cast<std::size_t>(end.neighbour)];
    if (crossing > 0 && request_.way != Way::pencilled) {
      out.by = EndBy::cut;
      out.reference = crossing;
    } else if (end.neighbour >= 0) {
      out.reference = line_of(items_[static_cast<std::size_t>(end.neighbour)]);
    } else {
      out.reference = pencil_line(
          measured_from, distance_from(measured_from, end.at, request_.board.edges), item.window);
    }
    return out;
  }

  void add_cut(const Item& item, int index) {
    BevelCut cut;
    cut.number = next_cut_++;
    cut.window = item.window;
    cut.openings = openings(item.window);
    cut.kept = item.kept;
    cut.distance = item.order.distance;
    cut.start = end_of(item, item.far, far_edge(item.order.edge, request_.cutter.side));
    cut.end = end_of(item, item.near, near_edge(item.order.edge, request_.cutter.side));
    if (item.order.freehand) {
      cut.pencil = line_of(item);
      cut.instead = outside_block(request_.cutter, cut.distance);
    }
    number_of_[static_cast<std::size_t>(index)] = cut.number;
    place(item.order, std::move(cut));
  }

  void place(const OrderItem& item, BevelCut cut) {
    if (stage().set_ups.empty() || !(stage().set_ups.back().settings == item.settings)) {
      stage().set_ups.push_back({next_set_up_++, item.settings, {}});
    }
    SetUp& set_up = stage().set_ups.back();
    if (set_up.placements.empty() || set_up.placements.back().edge != item.edge) {
      set_up.placements.push_back({item.edge, quarter_turns(last_edge_, item.edge), {}});
    }
    last_edge_ = item.edge;
    set_up.placements.back().cuts.push_back(std::move(cut));
  }

  // Pulled toward the operator with the kept board where the blade's tip points.
  void add_skew_cuts() {
    const CutterProfile& cutter = request_.cutter;
    const bool tip_left = (cutter.side == GuideSide::left) == (cutter.lean == BladeLean::to_guide);
    for (SkewLine line : lines().skew) {
      if (!tip_left) std::swap(line.from, line.to);
      stage().skew_cuts.push_back({next_cut_++, openings(line.window), line.from, line.to,
                                   line.over_cut, line.over_cut - cutter.mark_lead});
    }
  }

  void add_curves() {
    for (const Curve& curve : lines().curves) {
      const Window& window = request_.board.windows()[static_cast<std::size_t>(curve.window)];
      CurveCut cut{curve.kind, window.openings, window.back, window.face, {}, {}};
      if (cut.kind == CurveKind::template_cut) cut.lines = curve.lines;
      if (cut.kind == CurveKind::oval) cut.off = distance_from_ellipse(window.back_edge);
      stage().curves.push_back(std::move(cut));
    }
  }

  void add_times() {
    const HandlingTimes& t = times();
    const auto count = [](const auto& list) { return static_cast<std::int64_t>(list.size()); };
    std::int64_t each =
        count(stage().curves) * t.curve +
        count(stage().skew_cuts) * (t.pencil_line + t.freehand_line + t.bevel_cut + 2 * t.by_eye);
    if (request_.way == Way::pencilled) {
      std::int64_t freehand = 0;
      for (const Item& item : items_) freehand += item.order.freehand ? 1 : 0;
      // A freehand cut's own line is in the order's cost already.
      each += (count(stage().pencil_lines) - freehand) * t.pencil_line;
    }
    stage().seconds += each * request_.quantity;
    stage().bound += each * request_.quantity;
  }

  const StageRequest& request_;
  const PlannedLines* above_ = nullptr;
  PlannedStage out_;
  std::vector<Item> items_;
  std::vector<int> number_of_;  // of the cut, by item; 0: not cut yet
  std::map<std::tuple<int, BoardEdge, Length>, int> pencilled_;
  BoardEdge last_edge_ = BoardEdge::top;
  int next_cut_, next_set_up_;
  bool starts_on_cut_ = false;
};

}  // namespace

PlannedStage plan_stage(const StageRequest& request, const PlannedLines* above) {
  return Planner(request, above).plan();
}

}  // namespace mullion
