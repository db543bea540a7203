#include "engine/solver/certificate.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "engine/solver/elimination.h"

namespace mullion::solver {
namespace {

// What makes every multiplier whole and leaves no common divisor, where 64 bits hold it.
Rational whole_scale(const std::vector<Conflict::Part>& parts) {
  std::int64_t denominators = 1;
  for (const Conflict::Part& part : parts) {
    if (!part.multiplier.is_small()) return 1;
    const std::int64_t denominator = part.multiplier.denominator();
    const std::int64_t shared = std::gcd(denominators, denominator);
    if (__builtin_mul_overflow(denominators, denominator / shared, &denominators)) return 1;
  }
  std::int64_t divisor = 0;
  for (const Conflict::Part& part : parts) {
    const Rational whole = part.multiplier * Rational(denominators);
    if (!whole.is_small()) return Rational(denominators);
    divisor = std::gcd(divisor, whole.numerator());
  }
  return divisor == 0 ? Rational(1) : Rational(denominators) / Rational(divisor);
}

}  // namespace

Combination combine_to_constant(const std::vector<std::pair<int, Linear>>& equations,
                                const Linear& target) {
  std::map<int, std::pair<std::vector<Linear::Term>, Rational>> by_variable;
  for (std::size_t i = 0; i < equations.size(); ++i) {
    for (const Linear::Term& term : equations[i].second.terms()) {
      by_variable[term.variable].first.push_back({static_cast<int>(i), term.coefficient});
    }
  }
  for (const Linear::Term& term : target.terms())
    by_variable[term.variable].second = term.coefficient;

  Elimination multipliers(static_cast<int>(equations.size()));
  for (auto& [variable, equation] : by_variable) {
    multipliers.insert(Linear(std::move(equation.first), equation.second));
  }
  const std::vector<Rational> values =
      multipliers.complete(std::vector<Rational>(equations.size()));

  Combination out;
  out.constant = target.constant();
  for (std::size_t i = 0; i < equations.size(); ++i) {
    if (values[i].is_zero()) continue;
    out.parts.push_back({equations[i].first, values[i]});
    out.constant += values[i] * equations[i].second.constant();
  }
  return out;
}

Conflict tidy_conflict(std::vector<Conflict::Part> parts, Rational shortfall) {
  Rational scale = whole_scale(parts);
  if (shortfall.sign() < 0) scale = -scale;
  for (Conflict::Part& part : parts) part.multiplier *= scale;
  std::sort(parts.begin(), parts.end(),
            [](const auto& a, const auto& b) { return a.constraint < b.constraint; });
  return {std::move(parts), shortfall * scale};
}

}  // namespace mullion::solver
