#include "engine/sheets/batch/work_order.h"

#include <algorithm>

#include "engine/sheets/plan/stages.h"

namespace mullion {
namespace {

// What of each job is cut in a stage.
std::vector<RunJob> jobs_of_stage(const std::vector<BatchJob>& jobs,
                                  const std::map<MatCopy, int>& stages, int stage) {
  std::vector<RunJob> out;
  for (const BatchJob& job : jobs) {
    std::vector<int> copies;
    for (int copy = 1; copy <= job.quantity; ++copy) {
      const auto found = stages.find({job.order, copy});
      if (found != stages.end() && found->second == stage) copies.push_back(copy);
    }
    if (copies.empty()) continue;
    const int count = static_cast<int>(copies.size());
    if (count == job.quantity) copies.clear();
    out.push_back({job.order, job.title, job.mat, count, std::move(copies)});
  }
  return out;
}

std::vector<SetAside> set_aside_after(const SheetPlan& plan, const std::map<MatCopy, int>& stages,
                                      int stage) {
  std::vector<SetAside> out;
  for (const auto& [board, sheet] : sheets_in_order(plan)) {
    if (sheet->stock >= 0) continue;
    const BlankOrder& line = board->lines[static_cast<std::size_t>(sheet->parent.line)];
    if (stages.at({line.order, sheet->parent.copy}) != stage) continue;
    out.push_back(
        {line.order, line.layer, sheet->parent.copy, sheet->fallout.opening, sheet->number});
  }
  return out;
}

int last_stage(const SheetPlan& plan) {
  int last = 0;
  for (const auto& [board, sheet] : sheets_in_order(plan)) last = std::max(last, sheet->stage);
  return last;
}

}  // namespace

Result<std::vector<WorkPart>> order_of_work(const std::vector<BatchJob>& jobs,
                                            const SheetPlan& plan, const CutterProfile& cutter,
                                            const PlanOptions& options) {
  const std::map<MatCopy, int> stages = stages_of_mats(plan);
  std::vector<WorkPart> parts;
  Problems problems;
  int kinds = 0, steps = 0;
  for (int stage = 1; stage <= last_stage(plan); ++stage) {
    WorkPart part;
    part.stage = stage;
    for (const auto& [board, sheet] : sheets_in_order(plan)) {
      if (sheet->stage == stage) part.sheets.push_back(sheet->number);
    }
    Result<CuttingRun> run = plan_run(jobs_of_stage(jobs, stages, stage), cutter, options);
    if (!run) {
      problems.insert(problems.end(), run.error().begin(), run.error().end());
      continue;
    }
    part.run = std::move(*run);
    part.run.blanks.clear();  // the sheets' cuts make them
    for (RunKind& kind : part.run.kinds) kind.number = ++kinds;
    for (RunStep& step : part.run.steps) step.number = ++steps;
    part.set_aside = set_aside_after(plan, stages, stage);
    parts.push_back(std::move(part));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return parts;
}

}  // namespace mullion
