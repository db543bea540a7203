#include "engine/solver/working_set.h"

#include <algorithm>

namespace mullion::solver {

WorkingSet::WorkingSet(const Rules& rules, const std::vector<std::size_t>& working)
    : rules_(&rules) {
  for (const std::size_t i : working) {
    (rules.inequalities[i].level == 0 ? required_ : wanted_).push_back(i);
  }
}

void WorkingSet::enter(int level, Level& out) const {
  for (const std::size_t i : required_) out.required.push_back(rules_->inequalities[i].form);
  for (const std::size_t i : wanted_) {
    const Inequality& inequality = rules_->inequalities[i];
    if (inequality.level == level) out.at_least.push_back({inequality.form, inequality.weight});
  }
}

void WorkingSet::leave(int level, const LevelOptimum& optimum) {
  std::size_t k = 0;
  for (const std::size_t i : wanted_) {
    if (rules_->inequalities[i].level != level) continue;
    (optimum.missed[k++] ? missed_ : required_).push_back(i);
  }
}

bool extend(std::vector<std::size_t>& working, const Rules& rules,
            const std::vector<Rational>& values) {
  std::vector<std::size_t> broken;
  for (std::size_t i = 0; i < rules.inequalities.size(); ++i) {
    if (evaluate(rules.inequalities[i].form, values).sign() >= 0) continue;
    if (!std::binary_search(working.begin(), working.end(), i)) broken.push_back(i);
  }
  const auto middle = working.insert(working.end(), broken.begin(), broken.end());
  std::inplace_merge(working.begin(), middle, working.end());
  return !broken.empty();
}

}  // namespace mullion::solver
