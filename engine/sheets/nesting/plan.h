#pragma once

// A nesting under construction: the sheets cut so far and what is still wanted.

#include <vector>

#include "engine/sheets/nesting/nesting.h"

namespace mullion {

struct NestingPlan {
  std::vector<CutSheet> sheets;
  std::vector<int> wanted;   // per size
  std::vector<int> on_hand;  // per kind of stock; a large number where it has no limit

  bool finished() const;
};

NestingPlan empty_plan(const NestingProblem& problem);

// Takes the blanks off what is wanted and the sheet off the stock; the counts must be wanted.
void cut(NestingPlan& plan, CutSheet sheet);
// Gives both back, and removes the sheet.
void undo(NestingPlan& plan, std::size_t sheet);

// How good a plan is; less is better.
struct PlanScore {
  double missing = 0;  // area of the blanks that no sheet holds
  std::int64_t cost = 0;
  double useless = 0;  // minus the usefulness of the off-cuts
  int settings = 0;
  auto operator<=>(const PlanScore&) const = default;
};

PlanScore score(const NestingPlan& plan, const NestingProblem& problem);

}  // namespace mullion
