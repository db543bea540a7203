#pragma once

// The best arrangement of a job, before its sizes come to the rule's increment.

#include "engine/layout/model.h"

namespace mullion::layout {

struct Arrangement {
  Model model;  // of which every group is as large as its largest part
  solver::Solution solution;
};

// Why there is none, with the model that has it.
struct Refusal {
  Model model;
  solver::Conflict conflict;
};

// The best arrangement, or the conflict of the first choice of what fills the groups. `model` is a
// job's; `look_at`: see solver::solve.
tl::expected<Arrangement, Refusal> arrange(Model model, const std::vector<int>& look_at = {});

}  // namespace mullion::layout
