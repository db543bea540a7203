#include "engine/solver/elimination.h"

#include <algorithm>

namespace mullion::solver {

Linear collect(std::vector<Linear::Term> terms, Rational constant) {
  std::sort(terms.begin(), terms.end(),
            [](const auto& a, const auto& b) { return a.variable < b.variable; });
  std::vector<Linear::Term> sums;
  for (Linear::Term& term : terms) {
    if (!sums.empty() && sums.back().variable == term.variable) {
      sums.back().coefficient += term.coefficient;
    } else {
      if (!sums.empty() && sums.back().coefficient.is_zero()) sums.pop_back();
      sums.push_back(std::move(term));
    }
  }
  if (!sums.empty() && sums.back().coefficient.is_zero()) sums.pop_back();
  return {std::move(sums), std::move(constant)};
}

Elimination::Elimination(int variable_count)
    : expression_(index(variable_count)), users_(index(variable_count)) {}

int Elimination::add_variable() {
  expression_.emplace_back();
  users_.emplace_back();
  return variable_count() - 1;
}

Linear Elimination::reduce(const Linear& form) const {
  std::vector<Linear::Term> terms;
  Rational constant = form.constant();
  for (const Linear::Term& term : form.terms()) {
    const auto& expression = expression_[index(term.variable)];
    if (!expression) {
      terms.push_back(term);
      continue;
    }
    constant += term.coefficient * expression->constant();
    for (const Linear::Term& inner : expression->terms()) {
      terms.push_back({inner.variable, term.coefficient * inner.coefficient});
    }
  }
  return collect(std::move(terms), std::move(constant));
}

// The variable that stands in the fewest expressions, so that the fewest grow.
int Elimination::choose_pivot(const Linear& form) const {
  int best = -1;
  for (const Linear::Term& term : form.terms()) {
    if (best < 0 || users_[index(term.variable)].size() < users_[index(best)].size()) {
      best = term.variable;
    }
  }
  return best;
}

Elimination::Outcome Elimination::insert(const Linear& form) {
  const Linear reduced = reduce(form);
  if (reduced.is_constant()) {
    return reduced.constant().is_zero() ? Outcome::redundant : Outcome::inconsistent;
  }
  const int pivot = choose_pivot(reduced);
  const Rational coefficient = reduced.coefficient(Variable{pivot});
  Linear expression = reduced * (Rational(-1) / coefficient);
  expression.add(Linear(Variable{pivot}), 1);

  std::vector<int> users = std::move(users_[index(pivot)]);
  users_[index(pivot)].clear();
  std::sort(users.begin(), users.end());
  users.erase(std::unique(users.begin(), users.end()), users.end());
  std::vector<int> changed{pivot};
  for (const int user : users) {
    Linear& other = *expression_[index(user)];
    const Rational share = other.coefficient(Variable{pivot});
    if (share.is_zero()) continue;
    other.add(Linear(Variable{pivot}), -share);
    other.add(expression, share);
    changed.push_back(user);
  }
  for (const Linear::Term& term : expression.terms()) {
    auto& list = users_[index(term.variable)];
    list.insert(list.end(), changed.begin(), changed.end());
  }
  expression_[index(pivot)] = std::move(expression);
  return Outcome::solved;
}

std::vector<Rational> Elimination::complete(const std::vector<Rational>& free_values) const {
  std::vector<Rational> values = free_values;
  for (std::size_t i = 0; i < expression_.size(); ++i) {
    if (expression_[i]) values[i] = evaluate(*expression_[i], free_values);
  }
  return values;
}

}  // namespace mullion::solver
