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
    stage().passes = request.board.passes;
    for (const Item& item : items_) out_.lines.items.push_back(item.order);
  }

  PlannedStage plan() {
    choose_order();
    number_of_.assign(items_.size(), 0);
    if (request_.way < Way::one_stop) {
      for (const Item& item : items_) line_of(item);
    }
    if (request_.way == Way::guide_marked) mark_by_guide();
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
    const bool farther_first = request_.cutter.farther_first;
    if (above_ != nullptr && (!farther_first || keeps_rule(out_.lines.items, above_->order))) {
      out_.lines.order = above_->order;
      stage().same_order = true;
      stage().shift = shift_between(above_->items, out_.lines.items);
      return;
    }
    const Order& found =
        request_.memo.best(out_.lines.items, times(), request_.quantity, farther_first);
    out_.lines.order = found.items;
    exact_ = found.exact;
  }

  int pencil_line(BoardEdge edge, Length distance, int window) {
    const int next = static_cast<int>(stage().pencil_lines.size()) + 1;
    const auto [at, is_new] = pencilled_.emplace(std::pair(edge, distance), next);
    if (is_new) stage().pencil_lines.push_back({next, edge, distance, {}, false});
    std::vector<int>& all = stage().pencil_lines[static_cast<std::size_t>(at->second) - 1].openings;
    for (const int opening : openings(window)) {
      if (std::find(all.begin(), all.end(), opening) == all.end()) all.push_back(opening);
    }
    return at->second;
  }

  int line_of(const Item& item) {
    return pencil_line(item.order.edge, item.order.distance, item.window);
  }

  const std::vector<int>& openings(int window) const {
    return request_.board.windows()[static_cast<std::size_t>(window)].openings;
  }

  // Every distance that the guide reaches once, the farthest first, with the edges in the order in
  // which the board is turned to the right. The pencil goes along the rail's edge where its
  // distance from the blade's line is known, else the blade's point does.
  void mark_by_guide() {
    std::map<Length, std::vector<int>, std::greater<>> by_distance;
    for (const PencilLine& line : stage().pencil_lines) {
      by_distance[line.distance].push_back(line.number);
    }
    for (auto& [distance, numbers] : by_distance) {
      const auto setting =
          guide_for(request_.cutter, distance + request_.cutter.line_from_rail.value_or(Length()));
      if (!setting) continue;
      const auto edge = [&](int number) {
        return stage().pencil_lines[static_cast<std::size_t>(number) - 1].edge;
      };
      std::sort(numbers.begin(), numbers.end(), [&](int a, int b) {
        return quarter_turns(last_edge_, edge(a)) < quarter_turns(last_edge_, edge(b));
      });
      MarkSetUp set_up{*setting, {}};
      for (const int number : numbers) {
        const bool laid = is_taken_up(set_up.placements.empty());
        const int turns = laid ? 0 : quarter_turns(last_edge_, edge(number));
        set_up.placements.push_back({edge(number), laid, turns, number});
        stage().pencil_lines[static_cast<std::size_t>(number) - 1].by_guide = true;
        last_edge_ = edge(number);
        lies_ = true;
      }
      stage().marking.push_back(std::move(set_up));
    }
  }

  // At first, and for each set-up where there are several boards to go through.
  bool is_taken_up(bool first_of_set_up) const {
    return !lies_ || (first_of_set_up && request_.quantity > 1);
  }

  CutEnd end_of(const Item& item, const ItemEnd& end, BoardEdge measured_from, Length lead) {
    CutEnd out{end.line, end.over_cut, end.over_cut - lead, end.by, 0};
    if (out.by == EndBy::stop) return out;
    const int crossing =
        end.neighbour < 0 ? 0 : number_of_[static_cast<std::size_t>(end.neighbour)];
    if (crossing > 0 && request_.way >= Way::one_stop) {
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
    const CutterProfile& cutter = request_.cutter;
    CutEnd far = end_of(item, item.far, far_edge(item.order.edge, cutter.side), far_lead(cutter));
    CutEnd near =
        end_of(item, item.near, near_edge(item.order.edge, cutter.side), near_lead(cutter));
    cut.start = cutter.stroke == Stroke::pull ? far : near;
    cut.end = cutter.stroke == Stroke::pull ? near : far;
    if (item.order.freehand) {
      cut.pencil = line_of(item);
      cut.instead = outside_block(request_.cutter, cut.distance);
    }
    add_error(item.order, cut);
    number_of_[static_cast<std::size_t>(index)] = cut.number;
    place(item.order, std::move(cut));
  }

  void place(const OrderItem& item, BevelCut cut) {
    if (stage().set_ups.empty() || !(stage().set_ups.back().settings == item.settings)) {
      stage().set_ups.push_back({next_set_up_++, item.settings, {}});
    }
    SetUp& set_up = stage().set_ups.back();
    if (set_up.placements.empty() || set_up.placements.back().edge != item.edge) {
      const bool laid = is_taken_up(set_up.placements.empty());
      const int turns = laid ? 0 : quarter_turns(last_edge_, item.edge);
      set_up.placements.push_back({item.edge, laid, turns, {}});
    }
    last_edge_ = item.edge;
    lies_ = true;
    set_up.placements.back().cuts.push_back(std::move(cut));
  }

  Length line_error(int number) const {
    const LikelyErrors& e = request_.cutter.errors;
    if (request_.way == Way::template_taped) return e.printed_line;
    const auto& line = out_.stage.pencil_lines[static_cast<std::size_t>(number) - 1];
    return line.by_guide ? e.guide_line : e.rule_line;
  }

  void add_error(const OrderItem& item, const BevelCut& cut) {
    const LikelyErrors& e = request_.cutter.errors;
    Length error = item.freehand ? e.under_rail + line_error(cut.pencil) : e.guide;
    if (item.settings.block) error += e.gauge;
    for (const CutEnd* end : {&cut.start, &cut.end}) {
      if (end->by == EndBy::stop) error += e.stop + (item.settings.arm_block ? e.gauge : Length());
      if (end->by == EndBy::cut) error += e.by_eye + e.guide;
      if (end->by == EndBy::pencil) error += e.by_eye + line_error(end->reference);
    }
    stage().error += error;
  }

  void add_skew_cuts() {
    const CutterProfile& cutter = request_.cutter;
    const LikelyErrors& e = cutter.errors;
    for (SkewLine line : lines().skew) {
      if (!cut_as_outlined(cutter)) {
        std::swap(line.from, line.to);
        std::swap(line.from_over_cut, line.to_over_cut);
      }
      stage().skew_cuts.push_back({next_cut_++, openings(line.window), line.from, line.to,
                                   line.from_over_cut, line.to_over_cut,
                                   line.from_over_cut - start_lead(cutter),
                                   line.to_over_cut - cutter.mark_lead});
      stage().error += e.under_rail + 2 * e.by_eye + 3 * e.rule_line;
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
    // A second pass of the blade.
    const std::int64_t again = (stage().passes - 1) * std::int64_t{t.bevel_cut};
    std::int64_t each = count(stage().curves) * t.curve + count(items_) * again +
                        count(stage().skew_cuts) *
                            (t.pencil_line + t.freehand_line + t.bevel_cut + 2 * t.by_eye + again);
    std::int64_t ruled = 0, once = 0;
    for (const PencilLine& line : stage().pencil_lines) ruled += line.by_guide ? 0 : 1;
    std::int64_t strokes = ruled * t.pencil_line;
    if (request_.way == Way::template_taped) strokes = t.tape_template;
    for (const MarkSetUp& set_up : stage().marking) {
      once += t.guide_move;
      strokes += count(set_up.placements) * (t.guide_stroke + t.quarter_turn);
      if (request_.quantity > 1) strokes += t.rechuck;
    }
    const auto& items = out_.lines.items;
    const auto add = [&](std::int64_t handling, std::int64_t drawing) {
      return handling + (each + drawing) * request_.quantity + once;
    };
    stage().seconds =
        add(handling_of(items, out_.lines.order, times(), request_.quantity), strokes);
    // Which lines must be drawn depends on the order where cuts end at other cuts.
    const bool strokes_are_fixed = request_.way < Way::one_stop || stage().pencil_lines.empty();
    const bool is_best = strokes_are_fixed && (exact_ || stage().same_order);
    stage().bound =
        is_best ? stage().seconds : add(least_handling(items, times(), request_.quantity), 0);
  }

  const StageRequest& request_;
  const PlannedLines* above_ = nullptr;
  PlannedStage out_;
  std::vector<Item> items_;
  std::vector<int> number_of_;  // of the cut, by item; 0: not cut yet
  std::map<std::pair<BoardEdge, Length>, int> pencilled_;
  BoardEdge last_edge_ = BoardEdge::top;
  int next_cut_, next_set_up_;
  bool lies_ = false;  // the board lies on the cutter
  bool exact_ = true;  // no order is quicker
};

}  // namespace

PlannedStage plan_stage(const StageRequest& request, const PlannedLines* above) {
  return Planner(request, above).plan();
}

}  // namespace mullion
