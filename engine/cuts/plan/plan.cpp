#include "engine/cuts/plan/plan.h"

#include <algorithm>
#include <map>
#include <set>

#include "engine/cuts/plan/checks.h"
#include "engine/cuts/plan/items.h"
#include "engine/cuts/plan/notes.h"
#include "engine/cuts/plan/stage.h"
#include "engine/cuts/refusal.h"
#include "engine/locale/locale.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

bool possible(Way way, const CutterProfile& cutter) {
  const int needed = way < Way::one_stop ? 0 : way == Way::one_stop ? 1 : 2;
  const bool needs_guide = way == Way::guide_marked || way == Way::gauges;
  return stops(cutter) >= needed && (cutter.guide || !needs_guide);
}

Problem error(const char* code, std::string message) {
  return {Severity::error, code, std::move(message), {}, {}};
}

class PlanBuilder {
 public:
  PlanBuilder(const Cuts& cuts, const PlanOptions& options, Way way, OrderMemo& memo)
      : cuts_(cuts), memo_(memo) {
    plan_.cutter = cuts.cutter;
    plan_.job_unit = cuts.mat->unit;
    plan_.quantity = options.quantity;
    plan_.outer = cuts.mat->outer;
    plan_.way = way;
    plan_.stacked = cuts.stacked;
  }

  CuttingPlan build() {
    add_stages();
    add_blanks();
    add_gauges();
    for (const Stage& stage : plan_.stages) {
      plan_.seconds += stage.seconds;
      plan_.bound += stage.bound;
    }
    return std::move(plan_);
  }

 private:
  void add_stages() {
    planned_.reserve(cuts_.layers.size() + 1);
    if (cuts_.grooves) add_trims(add_stage(*cuts_.grooves, nullptr).stage);
    const PlannedLines* above = nullptr;
    for (const BoardCuts& board : cuts_.layers) {
      if (board.kind == StageKind::spacer) {
        planned_.push_back({spacer_stage(board), {}});
        continue;
      }
      above = &add_stage(board, above).lines;
    }
    for (PlannedStage& planned : planned_) {
      add_checks(planned.stage, *cuts_.mat);
      plan_.stages.push_back(std::move(planned.stage));
    }
  }

  void describe(const BoardCuts& board, Stage& stage) const {
    const MatLayer& layer = *board.layer;
    stage.kind = board.kind;
    stage.layer = layer.number;
    stage.name = layer.board.name;
    stage.board = layer.board.board;
    stage.thickness = layer.board.thickness;
    stage.run = board.kind == StageKind::spacer ? Length() : layer.run;
    stage.taped = board.taped;
    stage.blank = board.blank;
    if (!stage.taped) return;
    const std::int64_t tape = std::int64_t{plan_.cutter.times.tape_layer} * plan_.quantity;
    stage.seconds += tape;
    stage.bound += tape;
  }

  Stage spacer_stage(const BoardCuts& board) const {
    Stage stage;
    describe(board, stage);
    const std::vector<Window>& windows = board.windows();
    const bool strips =
        windows.size() == 1 && windows.front().back_edge == rectangle(windows.front().back);
    if (strips) {
      stage.strips = strips_around(windows.front().back, board.blank);
    } else {
      for (const Window& window : windows) stage.squares.push_back({window.openings, window.back});
    }
    const HandlingTimes& t = plan_.cutter.times;
    const auto sides = static_cast<std::int64_t>(stage.strips.size() + 4 * stage.squares.size());
    const std::int64_t each = sides * (t.straight_cut + (strips ? 0 : t.pencil_line));
    stage.seconds += each * plan_.quantity;
    stage.bound += each * plan_.quantity;
    return stage;
  }

  // The upright ones as long as the blank is high, the others between them.
  static std::vector<SpacerStrip> strips_around(const Rect& window, const Rect& blank) {
    return {{BoardEdge::left, window.left - blank.left, blank.height()},
            {BoardEdge::right, blank.right - window.right, blank.height()},
            {BoardEdge::top, window.top - blank.top, window.width()},
            {BoardEdge::bottom, blank.bottom - window.bottom, window.width()}};
  }

  // Spacers are cut once, by the squaring arm's stop.
  void add_gauges() {
    std::set<Length, std::greater<>> widths;
    for (const Stage& stage : plan_.stages) {
      for (const SetUp& set_up : stage.set_ups) {
        if (set_up.settings.block) widths.insert(set_up.settings.block->width);
        if (set_up.settings.arm_block) widths.insert(*set_up.settings.arm_block);
      }
      for (const MarkSetUp& set_up : stage.marking) {
        if (set_up.setting.block) widths.insert(set_up.setting.block->width);
      }
    }
    plan_.gauges.assign(widths.begin(), widths.end());
    const std::int64_t seconds =
        static_cast<std::int64_t>(widths.size()) * plan_.cutter.times.gauge_piece;
    plan_.seconds += seconds;
    plan_.bound += seconds;
  }

  PlannedStage& add_stage(const BoardCuts& board, const PlannedLines* above) {
    const StageRequest request{plan_.cutter, plan_.way,    plan_.quantity, board,
                               next_cut_,    next_set_up_, memo_};
    planned_.push_back(plan_stage(request, above));
    Stage& stage = planned_.back().stage;
    describe(board, stage);
    for (const SetUp& set_up : stage.set_ups) {
      for (const Placement& placement : set_up.placements) {
        next_cut_ += static_cast<int>(placement.cuts.size());
      }
    }
    next_cut_ += static_cast<int>(stage.skew_cuts.size());
    next_set_up_ += static_cast<int>(stage.set_ups.size());
    return planned_.back();
  }

  void add_trims(Stage& stage) {
    for (const MatGroove& groove : cuts_.mat->grooves) {
      const bool square = groove.line == rectangle(bounding_box(groove.line));
      stage.trims.push_back(
          {groove.openings, square, groove.width, guide_for(plan_.cutter, groove.width)});
    }
    const HandlingTimes& t = plan_.cutter.times;
    const auto trims = static_cast<std::int64_t>(stage.trims.size());
    const std::int64_t each = t.guide_move + 4 * (t.rechuck + t.bevel_cut) + t.tape_layer;
    stage.seconds += trims * each * plan_.quantity;
    stage.bound += trims * each * plan_.quantity;
  }

  // First a strip off the sheet, as wide as the shorter side and at least as long as the other;
  // then the blanks off the strip.
  void add_blanks() {
    std::map<std::pair<Length, Length>, std::vector<int>> sizes;
    for (const Stage& stage : plan_.stages) {
      if (stage.kind == StageKind::groove) continue;
      sizes[{-stage.blank.width(), -stage.blank.height()}].push_back(stage.layer);
    }
    const HandlingTimes& t = plan_.cutter.times;
    for (const auto& [key, layers] : sizes) {
      const Length width = -key.first, height = -key.second;
      add_side(true, std::min(width, height), std::max(width, height), layers);
      add_side(false, std::max(width, height), std::min(width, height), layers);
      const std::int64_t seconds =
          2 * (t.arm_stop_move +
               std::int64_t{t.straight_cut} * plan_.quantity * static_cast<int>(layers.size()));
      plan_.seconds += seconds;
      plan_.bound += seconds;
    }
  }

  void add_side(bool strip, Length size, Length length, const std::vector<int>& layers) {
    plan_.blanks.push_back({strip, size, length, size <= plan_.cutter.arm_length, layers});
  }

  const Cuts& cuts_;
  OrderMemo& memo_;
  CuttingPlan plan_;
  std::vector<PlannedStage> planned_;
  int next_cut_ = 1, next_set_up_ = 1;
};

bool has_no_lines(const CuttingPlan& plan) {
  return std::all_of(plan.stages.begin(), plan.stages.end(),
                     [](const Stage& stage) { return stage.set_ups.empty(); });
}

WayTime time_of(const CuttingPlan& plan) {
  Length error;
  std::int64_t places = 0;  // lines, and their two ends
  for (const Stage& stage : plan.stages) {
    error += stage.error;
    places += 3 * static_cast<std::int64_t>(cuts_of(stage).size() + stage.skew_cuts.size());
  }
  const std::int64_t price = error.ticks() * plan.cutter.error_price / ticks_per_mm;
  const Length mean = places == 0 ? Length() : Length::from_ticks(error.ticks() / places);
  return {plan.way, plan.seconds, mean, plan.seconds + price * plan.quantity};
}

Problems refusals_of(const Cuts& cuts, const PlanOptions& options) {
  Problems problems = problems_of(cuts);
  if (options.quantity < 1) {
    problems.push_back(error("cutter-quantity", "found a quantity below 1"));
  }
  if (options.way && !possible(*options.way, cuts.cutter)) {
    problems.push_back(error("cutter-way", std::string("cutting with ") + name_of(*options.way) +
                                               " needs more stops than the cutter \"" +
                                               cuts.cutter.id + "\" has"));
  }
  return problems;
}

}  // namespace

Result<CuttingPlan> plan_cutting(const Mat& mat, const CutterProfile& cutter,
                                 const PlanOptions& options) {
  const Cuts cuts = cuts_of(mat, cutter, options);
  Problems problems = refusals_of(cuts, options);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  std::optional<Way> wanted = options.way;
  if (!wanted && cutter.prefers && possible(*cutter.prefers, cutter)) wanted = cutter.prefers;
  std::optional<CuttingPlan> best;
  std::vector<WayTime> ways;
  std::int64_t least = 0;
  OrderMemo memo;
  for (const Way way : all_ways) {
    if (!possible(way, cutter)) continue;
    CuttingPlan plan = PlanBuilder(cuts, options, way, memo).build();
    // Without spacers these are two stops again, and without straight lines all are alike.
    const bool alike = spaces_along(way) && plan.gauges.empty();
    const bool first_alike = has_no_lines(plan) && !ways.empty();
    if ((alike || first_alike) && way != wanted) continue;
    const WayTime time = time_of(plan);
    const bool takes = wanted ? way == *wanted : !best || time.cost < least;
    ways.push_back(time);
    if (!takes) continue;
    best = std::move(plan);
    least = time.cost;
  }
  std::stable_sort(ways.begin(), ways.end(),
                   [](const WayTime& a, const WayTime& b) { return a.cost < b.cost; });
  best->ways = std::move(ways);
  best->notes = notes_on(*best, cuts);
  return std::move(*best);
}

std::vector<const BevelCut*> cuts_of(const Stage& stage) {
  std::vector<const BevelCut*> out;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) out.push_back(&cut);
    }
  }
  return out;
}

std::int64_t minutes(const CuttingPlan& plan) {
  return (plan.seconds + 59) / 60;
}

}  // namespace mullion
