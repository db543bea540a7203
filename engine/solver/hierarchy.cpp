#include "engine/solver/hierarchy.h"

#include <algorithm>

#include "engine/solver/certificate.h"
#include "engine/solver/feasibility.h"

namespace mullion::solver {

Hierarchy::Hierarchy(const System& system)
    : system_variables_(system.variable_count()), required_(system.variable_count()) {
  int number = 0;
  for (const Constraint& constraint : system.constraints()) take(constraint, number++);
}

void Hierarchy::take(const Constraint& constraint, int number) {
  const int sign = constraint.relation == Relation::at_most ? -1 : 1;
  if (constraint.relation == Relation::equal) {
    if (constraint.level > 0) {
      levels_[constraint.level].push_back({constraint.form, constraint.weight});
    } else {
      take_equation(constraint.form, number);
    }
    return;
  }
  Linear form = constraint.form * Rational(sign);
  if (constraint.level > 0) {
    // What is missing becomes a variable that is wanted to be zero.
    const Variable missing{required_.add_variable()};
    form += Linear(missing);
    levels_[constraint.level].push_back({Linear(missing), constraint.weight});
  }
  inequalities_.push_back({std::move(form), constraint.level > 0 ? -1 : number, sign});
}

void Hierarchy::take_equation(const Linear& form, int number) {
  const auto outcome = required_.insert(form);
  if (outcome == Elimination::Outcome::solved) independent_.emplace_back(number, form);
  if (outcome == Elimination::Outcome::inconsistent && contradictions_.empty()) {
    contradictions_.push_back(conflict_of(form, {{number, 1}}));
  }
}

bool Hierarchy::hold(const Linear& form) {
  return required_.insert(form) == Elimination::Outcome::solved;
}

tl::expected<Solution, Conflict> Hierarchy::solve() const {
  if (!contradictions_.empty()) return tl::unexpected(contradictions_.front());
  // Inequalities enter only when a solution without them breaks them.
  std::vector<std::size_t> working;
  for (;;) {
    auto point = solve_with(working);
    if (!point) return tl::unexpected(point.error());
    std::vector<std::size_t> broken;
    for (std::size_t i = 0; i < inequalities_.size(); ++i) {
      if (evaluate(inequalities_[i].form, *point).sign() < 0) broken.push_back(i);
    }
    if (broken.empty()) {
      point->resize(static_cast<std::size_t>(system_variables_));
      return Solution{std::move(*point)};
    }
    working.insert(working.end(), broken.begin(), broken.end());
    std::sort(working.begin(), working.end());
  }
}

tl::expected<Hierarchy::Point, Conflict> Hierarchy::solve_with(
    const std::vector<std::size_t>& working) const {
  Elimination space = required_;
  Point point = space.complete(Point(static_cast<std::size_t>(space.variable_count())));
  std::vector<Linear> inequalities;
  for (const std::size_t i : working) inequalities.push_back(space.reduce(inequalities_[i].form));
  if (!inequalities.empty()) {
    const auto feasible = find_feasible_point(inequalities, point);
    if (!feasible) {
      std::vector<Conflict::Part> parts;
      Linear combined;
      for (const auto& part : feasible.error().parts) {
        const Inequality& inequality = inequalities_[working[part.inequality]];
        combined.add(inequality.form, part.multiplier);
        parts.push_back({inequality.constraint, part.multiplier * Rational(inequality.sign)});
      }
      return tl::unexpected(conflict_of(combined, std::move(parts)));
    }
    point = space.complete(*feasible);
  }
  for (const auto& [level, preferences] : levels_) {
    optimise_level(space, preferences, inequalities, point);
  }
  std::vector<Preference> least_squares;
  for (int v = 0; v < space.variable_count(); ++v)
    least_squares.push_back({Linear(Variable{v}), 1});
  optimise_level(space, least_squares, inequalities, point);
  return space.complete(Point(static_cast<std::size_t>(space.variable_count())));
}

Conflict Hierarchy::conflict_of(const Linear& combined, std::vector<Conflict::Part> parts) const {
  const Combination rest = combine_to_constant(independent_, combined);
  parts.insert(parts.end(), rest.parts.begin(), rest.parts.end());
  return tidy_conflict(std::move(parts), -rest.constant);
}

tl::expected<Solution, Conflict> solve(const System& system) {
  return Hierarchy(system).solve();
}

}  // namespace mullion::solver
