#pragma once

// The best arrangement of a job, before its sizes come to the rule's increment.

#include "engine/layout/model.h"

namespace mullion::layout {

struct Arrangement {
  Model model;  // of which every group is as large as its largest part
  solver::Solution solution;
};

// Errors are conflicts, in the framer's words. `model` is the job's; `look_at`: see solver::solve.
Result<Arrangement> arrange(const Job& job, Model model, const std::vector<int>& look_at = {});

}  // namespace mullion::layout
