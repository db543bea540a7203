#include "engine/layout/arrangement.h"

#include <algorithm>

#include "engine/layout/conflict.h"

namespace mullion::layout {
namespace {

// A group is as large as its largest part. That is no linear rule; so the part that is largest in a
// solution is required to fill its group. True where that changes the solution.
bool fill_groups(Model& model, const solver::Solution& solution) {
  bool changed = false;
  for (const Model::Extent& extent : model.extents) {
    const auto size = [&](const Span& span) { return solution.value(span.size()); };
    const auto largest =
        std::max_element(extent.parts.begin(), extent.parts.end(),
                         [&](const Span& a, const Span& b) { return size(a) < size(b); });
    model.system.add(largest->size() == extent.group.size());
    changed = changed || size(*largest) != size(extent.group);
  }
  return changed;
}

}  // namespace

Result<Arrangement> arrange(const Job& job, Model model, const std::vector<int>& look_at) {
  auto solution = solver::solve(model.system, look_at);
  while (solution && fill_groups(model, *solution)) {
    solution = solver::solve(model.system, solution->looked_at);
  }
  if (!solution) return tl::unexpected(describe_conflict(job, model, solution.error()));
  return Arrangement{std::move(model), std::move(*solution)};
}

}  // namespace mullion::layout
