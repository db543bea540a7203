#include "engine/cuts/plan/plan.h"

#include <algorithm>
#include <map>

#include "engine/cuts/plan/stage.h"
#include "engine/cuts/refusal.h"
#include "engine/locale/locale.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

constexpr Way all_ways[] = {Way::pencilled, Way::one_stop, Way::two_stops};

bool possible(Way way, const CutterProfile& cutter) {
  return static_cast<int>(way) <= stops(cutter);
}

Problem error(const char* code, std::string message) {
  return {Severity::error, code, std::move(message), {}, {}};
}

class PlanBuilder {
 public:
  PlanBuilder(const Cuts& cuts, const PlanOptions& options, Way way) : cuts_(cuts) {
    plan_.cutter = cuts.cutter;
    plan_.quantity = options.quantity;
    plan_.outer = cuts.mat->outer;
    plan_.way = way;
    plan_.stacked = cuts.stacked;
  }

  CuttingPlan build() {
    add_stages();
    add_blanks();
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
    for (const BoardCuts& board : cuts_.layers) above = &add_stage(board, above).lines;
    for (PlannedStage& planned : planned_) plan_.stages.push_back(std::move(planned.stage));
  }

  PlannedStage& add_stage(const BoardCuts& board, const PlannedLines* above) {
    const MatLayer& layer = *board.layer;
    const StageRequest request{plan_.cutter, plan_.way, plan_.quantity,
                               board,        next_cut_, next_set_up_};
    planned_.push_back(plan_stage(request, above));
    Stage& stage = planned_.back().stage;
    stage.kind = board.kind;
    stage.layer = layer.number;
    stage.name = layer.board.name;
    stage.board = layer.board.board;
    stage.thickness = layer.board.thickness;
    stage.run = layer.run;
    stage.taped = board.taped;
    stage.blank = board.blank;
    if (stage.taped) {
      const std::int64_t tape = std::int64_t{plan_.cutter.times.tape_layer} * plan_.quantity;
      stage.seconds += tape;
      stage.bound += tape;
    }
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

  // Strips first, then the blanks from them: the longer side is measured off first.
  void add_blanks() {
    std::map<std::pair<Length, Length>, std::vector<int>> sizes;
    for (const Stage& stage : plan_.stages) {
      if (stage.kind == StageKind::groove) continue;
      sizes[{-stage.blank.width(), -stage.blank.height()}].push_back(stage.layer);
    }
    const HandlingTimes& t = plan_.cutter.times;
    for (const auto& [key, layers] : sizes) {
      const Length width = -key.first, height = -key.second;
      add_side(std::max(width, height), std::min(width, height), layers);
      add_side(std::min(width, height), std::max(width, height), layers);
      const std::int64_t seconds =
          2 * (t.arm_stop_move +
               std::int64_t{t.straight_cut} * plan_.quantity * static_cast<int>(layers.size()));
      plan_.seconds += seconds;
      plan_.bound += seconds;
    }
  }

  void add_side(Length size, Length length, const std::vector<int>& layers) {
    plan_.blanks.push_back({size, length, size <= plan_.cutter.arm_length, layers});
  }

  const Cuts& cuts_;
  CuttingPlan plan_;
  std::vector<PlannedStage> planned_;
  int next_cut_ = 1, next_set_up_ = 1;
};

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

std::vector<PlanNote> notes_on(const CuttingPlan& plan) {
  std::vector<PlanNote> notes;
  int freehand = 0;
  for (const Stage& stage : plan.stages) {
    const bool is_under_mat = stage.layer > 1 && stage.kind == StageKind::layer;
    if (is_under_mat && !stage.shift && !stage.set_ups.empty()) {
      notes.push_back(UnevenShift{stage.layer});
    }
    for (const SetUp& set_up : stage.set_ups) {
      for (const Placement& placement : set_up.placements) {
        for (const BevelCut& cut : placement.cuts) freehand += cut.pencil > 0 ? 1 : 0;
      }
    }
  }
  if (freehand > 0 && plan.cutter.guide) {
    notes.push_back(BeyondGuide{freehand, plan.cutter.guide->most});
  }
  const auto long_side =
      std::find_if(plan.blanks.begin(), plan.blanks.end(),
                   [&](const StraightCut& side) { return side.length > plan.cutter.longest_cut; });
  if (long_side != plan.blanks.end()) notes.push_back(LongBlank{long_side->length});
  return notes;
}

}  // namespace

std::string_view code_of(const PlanNote& note) {
  constexpr std::string_view codes[] = {"cutting-uneven-shift", "cutting-beyond-guide",
                                        "cutting-long-blank"};
  return codes[note.index()];
}

const char* name_of(Way way) {
  constexpr const char* names[] = {mark("pencil lines"), mark("one stop"), mark("two stops")};
  return names[static_cast<int>(way)];
}

Result<CuttingPlan> plan_cutting(const Mat& mat, const CutterProfile& cutter,
                                 const PlanOptions& options) {
  const Cuts cuts = cuts_of(mat, cutter, options);
  Problems problems = refusals_of(cuts, options);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  std::optional<CuttingPlan> best;
  std::vector<WayTime> ways;
  for (const Way way : all_ways) {
    if (!possible(way, cutter)) continue;
    CuttingPlan plan = PlanBuilder(cuts, options, way).build();
    ways.push_back({way, plan.seconds});
    const bool wanted = options.way ? way == *options.way : !best || plan.seconds < best->seconds;
    if (wanted) best = std::move(plan);
  }
  best->ways = std::move(ways);
  best->notes = notes_on(*best);
  return std::move(*best);
}

std::int64_t minutes(const CuttingPlan& plan) {
  return (plan.seconds + 59) / 60;
}

}  // namespace mullion
