#include "engine/solver/elimination.h"

#include <algorithm>
#include <functional>
#include <queue>
#include <utility>

#include "engine/solver/batch.h"

namespace mullion::solver {
namespace {}  // namespace

Elimination::Elimination(int variable_count) : Elimination(variable_count, variable_count) {}

Elimination::Elimination(int variable_count, int pivot_limit)
    : pivot_limit_(pivot_limit), order_(at(variable_count), -1), scratch_(at(variable_count)) {}

int Elimination::add_variable() {
  if (pivot_limit_ == variable_count()) ++pivot_limit_;
  order_.push_back(-1);
  scratch_.emplace_back();
  return variable_count() - 1;
}

bool Elimination::add(std::vector<Linear> forms) {
  if (!pivots_.empty()) {
    for (Linear& form : forms) form = reduce(std::move(form));
  }
  Batch batch(std::move(forms), pivot_limit_, variable_count());
  for (int number = batch.take_shortest(); number >= 0; number = batch.take_shortest()) {
    const Linear& row = batch.row(number);
    if (row.is_constant() && !row.constant().is_zero()) return false;
    const Term* pivot = batch.best_pivot(number);
    if (pivot == nullptr) continue;
    const int variable = pivot->variable;
    Linear value = row * (Rational(-1) / pivot->coefficient);
    value.add(Linear(Variable{variable}), 1);
    batch.substitute(variable, value);
    substitute(variable, std::move(value));
  }
  return true;
}

void Elimination::substitute(int variable, Linear value) {
  order_[at(variable)] = pivot_count();
  pivots_.push_back({variable, std::move(value)});
}

void Elimination::rewind(int pivots, int variables) {
  for (std::size_t i = at(pivots); i < pivots_.size(); ++i) order_[at(pivots_[i].variable)] = -1;
  pivots_.erase(pivots_.begin() + pivots, pivots_.end());
  if (pivot_limit_ == variable_count()) pivot_limit_ = variables;
  order_.resize(at(variables));
  scratch_.resize(at(variables));
}

bool Elimination::is_reduced(const Linear& form) const {
  return std::none_of(form.terms().begin(), form.terms().end(),
                      [&](const auto& term) { return is_pivot(term.variable); });
}

Linear Elimination::reduce(Linear form) const {
  if (is_reduced(form)) return form;

  std::priority_queue<int, std::vector<int>, std::greater<>> waiting;  // places in pivots_
  std::vector<int> left;
  Rational constant = form.constant();
  const auto add = [&](const Linear& part, const Rational& factor) {
    for (const Term& term : part.terms()) {
      Rational& coefficient = scratch_[at(term.variable)];
      if (coefficient.is_zero()) {
        if (is_pivot(term.variable)) {
          waiting.push(order_[at(term.variable)]);
        } else {
          left.push_back(term.variable);
        }
      }
      coefficient += term.coefficient * factor;
    }
  };
  add(form, 1);
  while (!waiting.empty()) {
    const Pivot& pivot = pivots_[at(waiting.top())];
    waiting.pop();
    const Rational factor = std::exchange(scratch_[at(pivot.variable)], Rational());
    if (factor.is_zero()) continue;
    constant += pivot.value.constant() * factor;
    add(pivot.value, factor);
  }
  std::sort(left.begin(), left.end());
  Terms terms;
  for (const int variable : left) {
    Rational coefficient = std::exchange(scratch_[at(variable)], Rational());
    if (!coefficient.is_zero()) terms.push_back({variable, std::move(coefficient)});
  }
  return {std::move(terms), std::move(constant)};
}

void Elimination::back_substitute(std::vector<Rational>& values) const {
  for (auto pivot = pivots_.rbegin(); pivot != pivots_.rend(); ++pivot) {
    values[at(pivot->variable)] = evaluate(pivot->value, values);
  }
}

}  // namespace mullion::solver
