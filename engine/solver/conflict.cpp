#include "engine/solver/conflict.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "engine/solver/content.h"
#include "engine/solver/elimination.h"
#include "engine/solver/feasibility.h"

namespace mullion::solver {
namespace {

using Numbers = std::vector<int>;

const Constraint& rule(const System& system, int number) {
  return system.constraints()[static_cast<std::size_t>(number)];
}

bool can_hold(const System& system, const Numbers& numbers) {
  std::vector<Linear> equations, inequalities;
  for (const int number : numbers) {
    const Constraint& constraint = rule(system, number);
    if (constraint.relation == Relation::equal) {
      equations.push_back(constraint.form);
    } else {
      inequalities.push_back(constraint.relation == Relation::at_least ? constraint.form
                                                                       : -constraint.form);
    }
  }
  Elimination space(system.variable_count());
  if (!space.add(std::move(equations))) return false;
  for (Linear& form : inequalities) form = space.reduce(std::move(form));
  return can_be_at_least_zero(inequalities, system.variable_count());
}

class Search {
 public:
  explicit Search(const System& system) : system_(system) {}

  // The rules of `suspects` that are needed for a conflict with `background`; `grew` says whether
  // the background is larger than when it was last known to hold.
  Numbers needed(const Numbers& background, bool grew, const Numbers& suspects) const {
    if (grew && !can_hold(system_, background)) return {};
    if (suspects.size() == 1) return suspects;
    const auto middle = suspects.begin() + static_cast<std::ptrdiff_t>(suspects.size() / 2);
    const Numbers first(suspects.begin(), middle), second(middle, suspects.end());
    const Numbers from_second = needed(joined(background, first), true, second);
    const Numbers from_first = needed(joined(background, from_second), !from_second.empty(), first);
    return joined(from_first, from_second);
  }

 private:
  static Numbers joined(Numbers a, const Numbers& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
  }

  const System& system_;
};

// Multiplies by what makes every multiplier whole and leaves no common divisor, where 64 bits do.
Rational whole_scale(const std::vector<Rational>& multipliers) {
  std::int64_t denominators = 1, divisor = 0;
  for (const Rational& multiplier : multipliers) {
    if (!multiplier.is_small()) return 1;
    const std::int64_t factor =
        multiplier.denominator() / std::gcd(denominators, multiplier.denominator());
    if (__builtin_mul_overflow(denominators, factor, &denominators)) return 1;
  }
  for (const Rational& multiplier : multipliers) {
    const Rational whole = multiplier * Rational(denominators);
    if (!whole.is_small()) return 1;
    divisor = std::gcd(divisor, whole.numerator());
  }
  return Rational(denominators, divisor);
}

// The only combination, up to a factor, in which all variables cancel.
std::vector<Rational> cancelling_multipliers(const System& system, const Numbers& numbers) {
  std::map<int, Terms> sums;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    for (const Term& term : rule(system, numbers[i]).form.terms()) {
      sums[term.variable].push_back({static_cast<int>(i), term.coefficient});
    }
  }
  Elimination multipliers(static_cast<int>(numbers.size()));
  std::vector<Linear> equations;
  equations.reserve(sums.size());
  for (auto& [variable, terms] : sums) equations.emplace_back(std::move(terms), Rational());
  multipliers.add(std::move(equations));
  std::vector<Rational> out(numbers.size(), Rational(1));
  multipliers.back_substitute(out);
  return out;
}

}  // namespace

Conflict find_conflict(const System& system, std::vector<int> suspects) {
  Numbers numbers =
      Search(system).needed({}, false, in_order_of_content(system, std::move(suspects)));
  std::sort(numbers.begin(), numbers.end());
  const std::vector<Rational> multipliers = cancelling_multipliers(system, numbers);
  Rational constant;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    constant += multipliers[i] * rule(system, numbers[i]).form.constant();
  }
  Rational scale = whole_scale(multipliers);
  if (constant.sign() > 0) scale = -scale;
  Conflict out;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    out.parts.push_back({numbers[i], multipliers[i] * scale});
  }
  out.shortfall = -constant * scale;
  return out;
}

}  // namespace mullion::solver
