#pragma once

// What a framer could change to resolve a conflict.

#include <optional>
#include <vector>

#include "engine/layout/model.h"

namespace mullion::layout {

// The required rules of a model, or some of them.
struct RequiredRules {
  solver::System system;
  std::vector<int> numbers;  // by rule of the system: its number in the model's system
};

RequiredRules required_rules(const Model& model);

// Parts of a system, by what they have to do with a conflict in the numbers of the model's system:
// its own rules; those that share a variable with them, directly or through others; and all but
// what its statements say among those that are `linked`.
RequiredRules parts_of(const solver::Conflict& conflict, const RequiredRules& rules);
RequiredRules linked_to(const solver::Conflict& conflict, const RequiredRules& rules);
RequiredRules without_statements_of(const solver::Conflict& conflict, const RequiredRules& linked,
                                    const RequiredRules& rules);

// A conflict of the rules' system, in the numbers of the model's.
solver::Conflict renumbered(solver::Conflict conflict, const RequiredRules& rules);

// A change that would resolve a conflict, as a value.
struct Remedy {
  std::vector<int> tags;         // of statements whose numbers change together, or of one left out
  std::optional<Length> number;  // in place of the stated one; nothing: left out
  bool others_stay = false;      // gaps: others are stated too, and stay as they are
};

// What could be changed. For every stated number of the statements (by tag) that can be another
// one, all others being as they are, the nearest number with which all `rules` hold: on the job's
// increment where there is such a one, else exact, and greater than zero. Numbers that belong
// together, such as equal borders at either side, change together. Where no number helps,
// statements to be left out. At most four ways, the outer size first; empty where no change of one
// statement makes the rules hold.
std::vector<Remedy> ways_out(const Job& job, const Model& model, const RequiredRules& rules,
                             const std::vector<int>& tags);

}  // namespace mullion::layout
