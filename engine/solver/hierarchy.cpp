#include "engine/solver/hierarchy.h"

#include "engine/solver/working_set.h"

namespace mullion::solver {
namespace {

std::vector<Preference> all_variables(const Rules& rules) {
  std::vector<Preference> out;
  out.reserve(static_cast<std::size_t>(rules.variable_count()));
  for (int v = 0; v < rules.variable_count(); ++v) out.push_back({Linear(Variable{v}), 1});
  return out;
}

bool pass(Elimination& space, const Rules& rules, const std::vector<std::size_t>& working) {
  WorkingSet inequalities(rules, working);
  const auto run = [&](int number, const std::vector<Preference>& preferences) {
    Level level{reduced(space, preferences), {}, {}};
    inequalities.enter(number, space, level);
    const auto optimum = optimise_level(space, level);
    if (!optimum) return false;
    inequalities.leave(number, optimum->missed);
    std::vector<Linear> equations;
    for (const auto& block : optimum->blocks) {
      equations.insert(equations.end(), block.equations.begin(), block.equations.end());
    }
    return space.add(std::move(equations));
  };
  for (const auto& [number, preferences] : rules.levels) {
    if (!run(number, preferences)) return false;
  }
  return run(0, all_variables(rules));
}

}  // namespace

tl::expected<Optimum, std::vector<std::size_t>> optimise(Elimination space, const Rules& rules,
                                                         std::vector<std::size_t> working) {
  const int pivots = space.pivot_count(), variables = space.variable_count();
  for (;;) {
    if (!pass(space, rules, working)) return tl::unexpected(std::move(working));
    std::vector<Rational> values(static_cast<std::size_t>(variables));
    space.back_substitute(values);
    if (!extend(working, rules, values)) return Optimum{std::move(values), std::move(working)};
    space.rewind(pivots, variables);
  }
}

}  // namespace mullion::solver
