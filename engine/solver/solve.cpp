#include "engine/solver/solve.h"

#include "engine/solver/conflict.h"
#include "engine/solver/hierarchy.h"

namespace mullion::solver {

tl::expected<Solution, Conflict> solve(const System& system) {
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
    const auto optimum = optimise(space, rules);
    if (!optimum) {
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
  }
  return solution;
}

}  // namespace mullion::solver
