#include "engine/solver/solve.h"

#include <algorithm>

#include "engine/solver/conflict.h"
#include "engine/solver/hierarchy.h"

namespace mullion::solver {
namespace {

// `look_at` is sorted.
std::vector<std::size_t> inequalities_among(const std::vector<int>& look_at, const Rules& rules) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < rules.inequalities.size() && !look_at.empty(); ++i) {
    const int number = rules.inequalities[i].constraint;
    if (std::binary_search(look_at.begin(), look_at.end(), number)) out.push_back(i);
  }
  return out;
}

}  // namespace

tl::expected<Solution, Conflict> solve(const System& system, const std::vector<int>& look_at) {
  const Components components = split(system);
  if (!components.broken_constants.empty()) {
    return tl::unexpected(find_conflict(system, components.broken_constants));
  }
  Solution solution{std::vector<Rational>(static_cast<std::size_t>(system.variable_count()))};
  for (const Rules& rules : components.parts) {
    Elimination space(rules.variable_count());
    if (!space.add(rules.equations)) {
      return tl::unexpected(find_conflict(system, rules.equation_constraints));
    }
    const auto optimum = optimise(std::move(space), rules, inequalities_among(look_at, rules));
    if (!optimum) {
      if (!look_at.empty()) return solve(system);  // which conflict is told depends on no hint
      std::vector<int> suspects = rules.equation_constraints;
      for (const std::size_t i : optimum.error()) {
        const Inequality& inequality = rules.inequalities[i];
        if (inequality.level == 0) suspects.push_back(inequality.constraint);
      }
      return tl::unexpected(find_conflict(system, std::move(suspects)));
    }
    for (int v = 0; v < rules.variable_count(); ++v) {
      solution.values[static_cast<std::size_t>(rules.variables[static_cast<std::size_t>(v)])] =
          optimum->values[static_cast<std::size_t>(v)];
    }
    for (const std::size_t i : optimum->working) {
      solution.looked_at.push_back(rules.inequalities[i].constraint);
    }
  }
  std::sort(solution.looked_at.begin(), solution.looked_at.end());
  return solution;
}

}  // namespace mullion::solver
