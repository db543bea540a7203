#include "engine/sheets/batch/batch.h"

#include "engine/sheets/plan/stages.h"

namespace mullion {

std::vector<BlankOrder> blanks_of(const std::vector<BatchJob>& jobs, const CutOptions& options) {
  std::vector<BlankOrder> all;
  for (const BatchJob& job : jobs) {
    for (BlankOrder& blank : blanks_of(cuts_of(job.mat, options), job.quantity, job.order)) {
      all.push_back(std::move(blank));
    }
  }
  return all;
}

std::vector<BlankLabel> labels_of(const SheetPlan& plan) {
  std::vector<BlankLabel> labels;
  for (const auto& [board, sheet] : sheets_in_order(plan)) {
    for (const PlacedBlank& placed : blanks_in(sheet->pattern, plan.limits.kerf)) {
      const BlankCopy& copy = sheet->blanks[static_cast<std::size_t>(placed.blank)];
      const BlankOrder& line = board->lines[static_cast<std::size_t>(copy.line)];
      labels.push_back(
          {line.order, line.layer, board->board.name, copy.copy, line.quantity, line.width,
           line.height, sheet->number,
           line.order + "/" + std::to_string(line.layer_number) + "/" + std::to_string(copy.copy)});
    }
  }
  return labels;
}

}  // namespace mullion
