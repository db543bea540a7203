#include "engine/solver/linear.h"

#include <algorithm>

namespace mullion::solver {

Rational Linear::coefficient(Variable variable) const {
  const auto found =
      std::lower_bound(terms_.begin(), terms_.end(), variable.index,
                       [](const Term& term, int index) { return term.variable < index; });
  return found != terms_.end() && found->variable == variable.index ? found->coefficient
                                                                    : Rational();
}

void Linear::add(const Linear& other, const Rational& factor) {
  if (factor.is_zero()) return;
  constant_ += other.constant_ * factor;
  if (other.is_constant()) return;
  Terms sum;
  sum.reserve(terms_.size() + other.terms_.size());
  auto mine = terms_.begin();
  for (const Term& term : other.terms_) {
    while (mine != terms_.end() && mine->variable < term.variable) {
      sum.push_back(std::move(*mine++));
    }
    Rational coefficient = term.coefficient * factor;
    if (mine != terms_.end() && mine->variable == term.variable) {
      coefficient += (mine++)->coefficient;
    }
    if (!coefficient.is_zero()) sum.push_back({term.variable, std::move(coefficient)});
  }
  std::move(mine, terms_.end(), std::back_inserter(sum));
  terms_ = std::move(sum);
}

Linear& Linear::operator+=(const Linear& other) {
  if (&other == this) return *this *= 2;
  add(other, 1);
  return *this;
}

Linear& Linear::operator-=(const Linear& other) {
  if (&other == this) return *this = Linear();
  add(other, -1);
  return *this;
}

Linear& Linear::operator*=(const Rational& factor) {
  if (factor.is_zero()) return *this = Linear();
  for (Term& term : terms_) term.coefficient *= factor;
  constant_ *= factor;
  return *this;
}

Linear operator+(Linear a, const Linear& b) {
  return std::move(a += b);
}

Linear operator-(Linear a, const Linear& b) {
  return std::move(a -= b);
}

Linear operator-(Linear a) {
  return std::move(a *= -1);
}

Linear operator*(Linear a, const Rational& factor) {
  return std::move(a *= factor);
}

Linear operator*(const Rational& factor, Linear a) {
  return std::move(a *= factor);
}

Linear operator/(Linear a, const Rational& divisor) {
  return std::move(a *= Rational(1) / divisor);
}

Linear collect(Terms terms, Rational constant) {
  std::sort(terms.begin(), terms.end(),
            [](const auto& a, const auto& b) { return a.variable < b.variable; });
  Terms sums;
  for (Term& term : terms) {
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

Rational evaluate(const Linear& form, const std::vector<Rational>& values) {
  Rational sum = form.constant();
  for (const Term& term : form.terms()) {
    sum += term.coefficient * values.at(static_cast<std::size_t>(term.variable));
  }
  return sum;
}

}  // namespace mullion::solver
