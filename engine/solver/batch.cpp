#include "engine/solver/batch.h"

#include <algorithm>

namespace mullion::solver {
namespace {}  // namespace

Batch::Batch(std::vector<Linear> rows, int pivot_limit, int variable_count)
    : rows_(std::move(rows)),
      pivot_limit_(pivot_limit),
      users_(at(variable_count)),
      taken_(rows_.size(), false) {
  std::vector<Entry> entries;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    note(static_cast<int>(i), rows_[i]);
    entries.emplace_back(rows_[i].terms().size(), static_cast<int>(i));
  }
  queue_ = decltype(queue_)(std::greater<>(), std::move(entries));
}

void Batch::note(int number, const Linear& form) {
  for (const Term& term : form.terms()) users_[at(term.variable)].push_back(number);
}

int Batch::take_shortest() {
  while (!queue_.empty()) {
    const auto [length, number] = queue_.top();
    queue_.pop();
    if (taken_[at(number)] || length != row(number).terms().size()) continue;
    taken_[at(number)] = true;
    return number;
  }
  return -1;
}

const Term* Batch::best_pivot(int number) const {
  const Term* best = nullptr;
  for (const Term& term : row(number).terms()) {
    if (term.variable >= pivot_limit_) break;
    if (best == nullptr || users_[at(term.variable)].size() < users_[at(best->variable)].size()) {
      best = &term;
    }
  }
  return best;
}

void Batch::substitute(int variable, const Linear& value) {
  std::vector<int> users = std::move(users_[at(variable)]);
  users_[at(variable)].clear();
  std::sort(users.begin(), users.end());
  users.erase(std::unique(users.begin(), users.end()), users.end());
  Linear change = value;
  change.add(Linear(Variable{variable}), -1);
  for (const int number : users) {
    if (taken_[at(number)]) continue;
    const Rational factor = row(number).coefficient(Variable{variable});
    if (factor.is_zero()) continue;
    rows_[at(number)].add(change, factor);
    note(number, value);
    queue_.emplace(row(number).terms().size(), number);
  }
}

}  // namespace mullion::solver
