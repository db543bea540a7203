#include "engine/solver/working_set.h"

#include <algorithm>

namespace mullion::solver {

WorkingSet::WorkingSet(const Rules& rules, const std::vector<std::size_t>& working)
    : rules_(&rules) {
  for (const std::size_t i : working) {
    const Inequality& inequality = rules.inequalities[i];
    (inequality.level == 0 ? required_ : wanted_).push_back({i, inequality.form});
  }
}

void WorkingSet::enter(int level, const Elimination& space, Level& out) {
  for (Entry& entry : required_) {
    entry.form = space.reduce(std::move(entry.form));
  }
  std::erase_if(required_, [](const Entry& entry) {
    return entry.form.is_constant() && entry.form.constant().sign() >= 0;
  });
  for (const Entry& entry : required_) out.required.push_back(entry.form);
  for (Entry& entry : wanted_) {
    const Inequality& inequality = rules_->inequalities[entry.number];
    if (inequality.level != level) continue;
    entry.form = space.reduce(std::move(entry.form));
    out.at_least.push_back({entry.form, inequality.weight});
  }
}

void WorkingSet::leave(int level, const std::vector<bool>& missed) {
  std::size_t k = 0;
  for (Entry& entry : wanted_) {
    if (rules_->inequalities[entry.number].level != level) continue;
    if (missed[k++]) {
      missed_.push_back(entry.number);
    } else {
      required_.push_back(entry);
    }
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
