#pragma once

// Variables, and sums of them: coefficient * variable + ... + constant.
//
// Sums are built by arithmetic: `2 * left + width - 3`.

#include <concepts>
#include <utility>
#include <vector>

#include "engine/solver/terms.h"

namespace mullion::solver {

inline std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

// A variable of one System; any real value.
struct Variable {
  int index = -1;
};

class Linear {
 public:
  Linear() = default;
  Linear(Variable variable) { terms_.push_back({variable.index, 1}); }
  Linear(Rational constant) : constant_(std::move(constant)) {}
  template <std::integral Integer>
  Linear(Integer constant) : constant_(constant) {}
  // `terms` by rising variable, each variable once, no coefficient zero.
  Linear(Terms terms, Rational constant)
      : terms_(std::move(terms)), constant_(std::move(constant)) {}

  const Terms& terms() const { return terms_; }  // by rising variable
  const Rational& constant() const { return constant_; }
  bool is_constant() const { return terms_.empty(); }
  Rational coefficient(Variable variable) const;  // zero where it does not occur

  // Adds factor * other.
  void add(const Linear& other, const Rational& factor);

  Linear& operator+=(const Linear& other);
  Linear& operator-=(const Linear& other);
  Linear& operator*=(const Rational& factor);

 private:
  Terms terms_;
  Rational constant_;
};

Linear operator+(Linear a, const Linear& b);
Linear operator-(Linear a, const Linear& b);
Linear operator-(Linear a);
Linear operator*(Linear a, const Rational& factor);
Linear operator*(const Rational& factor, Linear a);
Linear operator/(Linear a, const Rational& divisor);

// Sums terms that may name a variable more than once, in any order.
Linear collect(Terms terms, Rational constant);

// The value of `form` where variable i has values[i].
Rational evaluate(const Linear& form, const std::vector<Rational>& values);

}  // namespace mullion::solver
