#include "engine/solver/positions.h"

#include <algorithm>

namespace mullion::solver {
namespace {

// By free variable where it is on the grid, modulo the step: where the first measure that depends
// on it alone is.
std::vector<Rational> offsets_for(const Elimination& space,
                                  const std::vector<GridMeasure>& measures) {
  std::vector<Rational> offsets(static_cast<std::size_t>(space.variable_count()));
  std::vector<bool> known(offsets.size(), false);
  for (const GridMeasure& measure : measures) {
    const Linear form = space.reduce(measure.form);
    if (form.terms().size() != 1) continue;
    const auto& [variable, coefficient] = form.terms().front();
    const auto v = static_cast<std::size_t>(variable);
    if (known[v]) continue;
    known[v] = true;
    offsets[v] = -form.constant() / coefficient;
  }
  return offsets;
}

}  // namespace

std::optional<std::vector<Rational>> round_positions(const Rules& rules,
                                                     const std::vector<Rational>& exact,
                                                     const std::vector<GridMeasure>& measures,
                                                     const Rational& step) {
  Elimination space(rules.variable_count());
  if (!space.add(rules.equations)) return std::nullopt;
  const std::vector<Rational> offsets = offsets_for(space, measures);
  std::vector<Rational> values = exact;
  for (std::size_t v = 0; v < values.size(); ++v) {
    if (space.is_pivot(static_cast<int>(v))) continue;
    const Rational steps = (values[v] - offsets[v]) / step;
    values[v] = offsets[v] + (steps + Rational(1, 2)).floor() * step;
  }
  space.back_substitute(values);
  const bool holds = std::all_of(
      rules.inequalities.begin(), rules.inequalities.end(),
      [&](const auto& rule) { return rule.level > 0 || evaluate(rule.form, values).sign() >= 0; });
  if (!holds) return std::nullopt;
  return values;
}

}  // namespace mullion::solver
