#include "engine/cuts/run/run.h"

#include <algorithm>
#include <map>

#include "engine/cuts/run/sequence.h"

namespace mullion {
namespace {

bool same_cuts(const Window& a, const Window& b) {
  return a.openings == b.openings && a.shape == b.shape && a.back == b.back && a.face == b.face &&
         a.back_edge == b.back_edge && a.face_edge == b.face_edge;
}

bool same_cuts(const MatLayer& a, const MatLayer& b) {
  return a.number == b.number && a.board.name == b.board.name && a.board.board == b.board.board &&
         a.board.thickness == b.board.thickness && a.run == b.run &&
         std::equal(a.windows.begin(), a.windows.end(), b.windows.begin(), b.windows.end(),
                    [](const Window& x, const Window& y) { return same_cuts(x, y); });
}

bool same_cuts(const Mat& a, const Mat& b) {
  const auto same_groove = [](const MatGroove& x, const MatGroove& y) {
    return x.openings == y.openings && x.line == y.line && x.width == y.width;
  };
  return a.unit == b.unit && a.outer == b.outer &&
         std::equal(a.layers.begin(), a.layers.end(), b.layers.begin(), b.layers.end(),
                    [](const MatLayer& x, const MatLayer& y) { return same_cuts(x, y); }) &&
         std::equal(a.grooves.begin(), a.grooves.end(), b.grooves.begin(), b.grooves.end(),
                    same_groove);
}

// Jobs that are cut alike.
struct Alike {
  const Mat* mat = nullptr;
  std::vector<RunShare> shares;

  int quantity() const {
    int sum = 0;
    for (const RunShare& share : shares) sum += share.quantity;
    return sum;
  }
};

std::vector<Alike> alike_jobs(const std::vector<RunJob>& jobs) {
  std::vector<Alike> alike;
  for (const RunJob& job : jobs) {
    auto same = std::find_if(alike.begin(), alike.end(),
                             [&](const Alike& one) { return same_cuts(*one.mat, job.mat); });
    if (same == alike.end()) same = alike.insert(alike.end(), {&job.mat, {}});
    same->shares.push_back({job.order, job.title, job.quantity, job.copies});
  }
  return alike;
}

Result<std::vector<CuttingPlan>> plans_of(const std::vector<Alike>& alike,
                                          const CutterProfile& cutter, PlanOptions options) {
  std::vector<CuttingPlan> plans;
  Problems problems;
  for (const Alike& one : alike) {
    options.quantity = one.quantity();
    Result<CuttingPlan> plan = plan_cutting(*one.mat, cutter, options);
    if (plan) {
      plan->reference = one.shares.front().order;
      plan->title = one.shares.front().title;
      plans.push_back(std::move(*plan));
      continue;
    }
    for (Problem& problem : plan.error()) {
      problem.message = one.shares.front().order + ": " + problem.message;
      problems.push_back(std::move(problem));
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return plans;
}

std::vector<RunBlank> blanks_of(const std::vector<CuttingPlan>& plans) {
  std::map<std::tuple<int, Length, Length>, RunBlank> by_size;  // strips first
  for (std::size_t k = 0; k < plans.size(); ++k) {
    for (const StraightCut& side : plans[k].blanks) {
      RunBlank& blank = by_size[{side.strip ? 0 : 1, -side.size, -side.length}];
      blank.strip = side.strip;
      blank.size = side.size;
      blank.length = side.length;
      blank.by_stop = side.by_stop;
      blank.shares.push_back({static_cast<int>(k), side.layers});
    }
  }
  std::vector<RunBlank> out;
  out.reserve(by_size.size());
  for (auto& [size, blank] : by_size) out.push_back(std::move(blank));
  return out;
}

// The squaring arm's stop is set once for a size, not once for each kind.
std::int64_t arm_moves_saved(const std::vector<RunBlank>& blanks) {
  std::int64_t sides = 0;
  for (const RunBlank& blank : blanks) sides += static_cast<std::int64_t>(blank.shares.size()) - 1;
  return sides;
}

std::vector<RunStep> steps_of(const std::vector<CuttingPlan>& plans,
                              const std::vector<RunWork>& all) {
  std::vector<RunStep> steps;
  Settings shown;  // by the scales
  for (const RunWork& work : all) {
    const CuttingPlan& plan = plans[static_cast<std::size_t>(work.kind)];
    const Settings& s = settings_of(plan, work);
    const Stage& stage = plan.stages[static_cast<std::size_t>(work.stage)];
    if (work.set_up <= 0 && !stage.marking.empty()) {
      shown = settings_at(stage.marking.back().setting);
    }
    if (!steps.empty() && (steps.back().settings == s || work.set_up < 0)) {
      steps.back().work.push_back(work);
      continue;
    }
    RunStep step;
    step.number = static_cast<int>(steps.size()) + 1;
    step.settings = s;
    step.guide_moves = s.guide && shown.guide != s.guide;
    step.spacers_change = (s.guide && shown.block != s.block) || shown.arm_block != s.arm_block;
    step.near_stop_moves = s.near_stop && shown.near_stop != s.near_stop;
    step.far_stop_moves = s.far_stop && shown.far_stop != s.far_stop;
    if (work.set_up >= 0) shown = s;
    step.work.push_back(work);
    steps.push_back(std::move(step));
  }
  return steps;
}

CuttingRun assemble(const std::vector<Alike>& alike, std::vector<CuttingPlan> plans,
                    const CutterProfile& cutter) {
  CuttingRun run;
  run.cutter = cutter;
  const Sequence sequence = sequence_of(plans, cutter.times);
  run.mixed = sequence.mixed;
  run.steps = steps_of(plans, sequence.work);
  run.blanks = blanks_of(plans);
  for (const CuttingPlan& plan : plans) run.alone += plan.seconds;
  const std::int64_t handling =
      run.alone - sequence.own_moves - arm_moves_saved(run.blanks) * cutter.times.arm_stop_move;
  run.seconds = handling + sequence.moves;
  run.bound = handling + sequence.least_moves;
  for (std::size_t k = 0; k < plans.size(); ++k) {
    run.kinds.push_back({static_cast<int>(k) + 1, alike[k].shares, std::move(plans[k])});
  }
  return run;
}

}  // namespace

Result<CuttingRun> plan_run(const std::vector<RunJob>& jobs, const CutterProfile& cutter,
                            const PlanOptions& options) {
  const std::vector<Alike> alike = alike_jobs(jobs);
  Result<std::vector<CuttingPlan>> own = plans_of(alike, cutter, options);
  if (!own) return tl::unexpected(std::move(own.error()));
  CuttingRun run = assemble(alike, std::move(*own), cutter);
  if (options.way || stops(cutter) < 2) return run;
  PlanOptions by_stops = options;
  by_stops.way = Way::two_stops;
  Result<std::vector<CuttingPlan>> with_stops = plans_of(alike, cutter, by_stops);
  if (!with_stops) return run;
  CuttingRun other = assemble(alike, std::move(*with_stops), cutter);
  return other.seconds < run.seconds ? other : run;
}

int mats_in(const CuttingRun& run) {
  int sum = 0;
  for (const RunKind& kind : run.kinds) sum += kind.plan.quantity;
  return sum;
}

std::int64_t minutes(const CuttingRun& run) {
  return (run.seconds + 59) / 60;
}

}  // namespace mullion
