#include "engine/cuts/plan/plan.h"

#include <algorithm>
#include <map>

#include "engine/cuts/plan/stage.h"
#include "engine/locale/locale.h"
#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

constexpr Way all_ways[] = {Way::pencilled, Way::one_stop, Way::two_stops};

bool possible(Way way, const CutterProfile& cutter) {
  return static_cast<int>(way) <= stops(cutter);
}

// Where a groove's panel is cut out: the groove's outer edge on the face, and below it the back.
tl::expected<Window, std::string> panel_of(const MatGroove& groove, Length run) {
  const Length half = half_rounded_down(groove.width);
  Window panel;
  panel.openings = groove.openings;
  const Rect middle = bounding_box(groove.line);
  if (groove.line == rectangle(middle)) {
    panel.face_edge = rectangle(outset(middle, half));
    panel.back_edge = rectangle(outset(middle, half - run));
  } else {
    panel.shape.kind = groove.shape;
    const auto face = parallel(groove.line, half);
    if (!face) return tl::unexpected(face.error());
    const auto back = parallel(groove.line, half - run);
    if (!back) return tl::unexpected(back.error());
    panel.face_edge = *face;
    panel.back_edge = *back;
  }
  panel.face = bounding_box(panel.face_edge);
  panel.back = bounding_box(panel.back_edge);
  return panel;
}

class PlanBuilder {
 public:
  PlanBuilder(const Mat& mat, const CutterProfile& cutter, const PlanOptions& options, Way way)
      : mat_(mat), options_(options) {
    plan_.cutter = cutter;
    plan_.quantity = options.quantity;
    plan_.outer = mat.outer;
    plan_.way = way;
    plan_.stacked = options.stacked && mat.layers.size() > 1;
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
    planned_.reserve(mat_.layers.size() + 1);
    const MatLayer& top = mat_.layers.front();
    std::vector<Window> panels;
    for (const MatGroove& groove : mat_.grooves)
      panels.push_back(panel_of(groove, top.run).value());
    if (!panels.empty()) {
      Stage& stage = add_stage(top, panels, nullptr).stage;
      stage.kind = StageKind::groove;
      add_trims(stage);
    }
    const PlannedLines* above = nullptr;
    for (const MatLayer& layer : mat_.layers) above = &add_stage(layer, layer.windows, above).lines;
    for (PlannedStage& planned : planned_) plan_.stages.push_back(std::move(planned.stage));
  }

  PlannedStage& add_stage(const MatLayer& layer, const std::vector<Window>& windows,
                          const PlannedLines* above) {
    const StageRequest request{plan_.cutter, plan_.way, plan_.quantity, mat_.outer,
                               windows,      layer.run, next_cut_,      next_set_up_};
    planned_.push_back(plan_stage(request, above));
    Stage& stage = planned_.back().stage;
    stage.layer = layer.number;
    stage.name = layer.board.name;
    stage.board = layer.board.board;
    stage.thickness = layer.board.thickness;
    stage.run = layer.run;
    stage.taped = plan_.stacked && layer.number > 1;
    stage.blank = mat_.outer;
    if (stage.taped) {
      const Length t = options_.trim;
      stage.blank = inset(mat_.outer, {t, t, t, t});
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
    for (const MatGroove& groove : mat_.grooves) {
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

  const Mat& mat_;
  const PlanOptions& options_;
  CuttingPlan plan_;
  std::vector<PlannedStage> planned_;
  int next_cut_ = 1, next_set_up_ = 1;
};

class Fitness {
 public:
  Fitness(const Mat& mat, const CutterProfile& cutter, const PlanOptions& options)
      : mat_(mat), cutter_(cutter), options_(options) {}

  Problems problems() {
    if (mat_.layers.empty()) fail("cutter-no-layer", "the mat has no layer to cut");
    if (options_.quantity < 1) fail("cutter-quantity", "found a quantity below 1");
    if (options_.trim < Length() || options_.trim * 2 >= shorter_side()) {
      fail("cutter-trim", "the trim of the under-mats leaves no blank");
    }
    if (options_.way && !possible(*options_.way, cutter_)) {
      fail("cutter-way", std::string("cutting with ") + name_of(*options_.way) +
                             " needs more stops than the cutter \"" + cutter_.id + "\" has");
    }
    for (const MatLayer& layer : mat_.layers) check_lines(layer);
    for (const MatGroove& groove : mat_.grooves) check_groove(groove);
    return std::move(problems_);
  }

 private:
  Length shorter_side() const { return std::min(mat_.outer.width(), mat_.outer.height()); }

  void check_lines(const MatLayer& layer) {
    const Length over = over_cut(cutter_, layer.run) * 2;
    Length longest;
    for (const StraightLine& line : lines_of(layer.windows).straight) {
      const Length length = distance_between(line.ends[0].at, line.ends[1].at);
      longest = std::max(longest, length);
      const bool across = line.kept == BoardEdge::top || line.kept == BoardEdge::bottom;
      const Length board = across ? mat_.outer.height() : mat_.outer.width();
      if (board > cutter_.widest_board && !too_wide_) {
        too_wide_ = true;
        fail("cutter-board-too-wide", "the mat is " + text(board) +
                                          " across the rail; the cutter \"" + cutter_.id +
                                          "\" takes " + text(cutter_.widest_board));
      }
    }
    if (longest + over <= cutter_.longest_cut || too_long_) return;
    too_long_ = true;
    fail("cutter-cut-too-long", "layer " + std::to_string(layer.number) + " needs a cut of " +
                                    text(longest + over) + ", over-cuts included; the cutter \"" +
                                    cutter_.id + "\" cuts at most " + text(cutter_.longest_cut));
  }

  void check_groove(const MatGroove& groove) {
    if (mat_.layers.empty()) return;
    const auto panel = panel_of(groove, mat_.layers.front().run);
    if (!panel) fail("cutter-groove", "the panel of a V-groove cannot be cut: " + panel.error());
  }

  static Length distance_between(Point a, Point b) {
    const Length x = a.x < b.x ? b.x - a.x : a.x - b.x;
    const Length y = a.y < b.y ? b.y - a.y : a.y - b.y;
    return x + y;
  }
  std::string text(Length length) const { return format_exact(length, cutter_.scale.unit); }
  void fail(const char* code, std::string message) {
    problems_.push_back({Severity::error, code, std::move(message), {}, {}});
  }

  const Mat& mat_;
  const CutterProfile& cutter_;
  const PlanOptions& options_;
  Problems problems_;
  bool too_wide_ = false, too_long_ = false;
};

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
  Problems problems = Fitness(mat, cutter, options).problems();
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  std::optional<CuttingPlan> best;
  std::vector<WayTime> ways;
  for (const Way way : all_ways) {
    if (!possible(way, cutter)) continue;
    CuttingPlan plan = PlanBuilder(mat, cutter, options, way).build();
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
