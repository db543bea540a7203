#include "engine/solver/content.h"

#include <algorithm>
#include <numeric>

namespace mullion::solver {
namespace {

std::strong_ordering compare(const Linear& a, const Linear& b) {
  if (const auto order = a.terms() <=> b.terms(); order != 0) return order;
  return a.constant() <=> b.constant();
}

bool precedes(const Constraint& a, const Constraint& b) {
  if (a.level != b.level) return a.level < b.level;
  if (const auto order = compare(a.form, b.form); order != 0) return order < 0;
  if (a.relation != b.relation) return a.relation < b.relation;
  if (a.weight != b.weight) return a.weight < b.weight;
  return a.tag < b.tag;
}

}  // namespace

Constraint turned_upright(Constraint constraint) {
  const Linear& form = constraint.form;
  const Rational& leading = form.is_constant() ? form.constant() : form.terms().front().coefficient;
  if (leading.sign() >= 0) return constraint;
  constraint.form *= -1;
  if (constraint.relation == Relation::at_least) {
    constraint.relation = Relation::at_most;
  } else if (constraint.relation == Relation::at_most) {
    constraint.relation = Relation::at_least;
  }
  return constraint;
}

std::vector<int> in_order_of_content(const System& system, std::vector<int> numbers) {
  std::vector<std::pair<Constraint, int>> rules;
  rules.reserve(numbers.size());
  for (const int number : numbers) {
    rules.emplace_back(turned_upright(system.constraints()[static_cast<std::size_t>(number)]),
                       number);
  }
  std::stable_sort(rules.begin(), rules.end(),
                   [](const auto& a, const auto& b) { return precedes(a.first, b.first); });
  for (std::size_t i = 0; i < rules.size(); ++i) numbers[i] = rules[i].second;
  return numbers;
}

System in_order_of_content(const System& system) {
  std::vector<Constraint> rules;
  for (const Constraint& constraint : system.constraints()) {
    rules.push_back(turned_upright(constraint));
  }
  std::vector<std::size_t> order(rules.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return precedes(rules[a], rules[b]); });
  System out;
  for (int v = 0; v < system.variable_count(); ++v) out.add_variable();
  for (const std::size_t i : order) out.add(std::move(rules[i]));
  return out;
}

}  // namespace mullion::solver
