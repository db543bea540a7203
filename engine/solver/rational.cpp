#include "engine/solver/rational.h"

#include <gmpxx.h>

#include <bit>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace mullion::solver {
namespace {

constexpr std::int64_t largest = std::numeric_limits<std::int64_t>::max();

bool fits(const mpz_class& value) {
  return mpz_cmpabs_ui(value.get_mpz_t(), static_cast<unsigned long>(largest)) <= 0;
}

}  // namespace

struct Rational::Big {
  mpq_class value;
};

Rational::Rational(std::int64_t numerator, std::int64_t denominator) {
  if (denominator == 0) throw std::domain_error("division by zero");
  if (numerator >= -largest && denominator == 1) {
    numerator_ = numerator;
  } else if (numerator >= -largest && denominator >= -largest) {
    const std::int64_t divisor = std::gcd(numerator, denominator) * (denominator < 0 ? -1 : 1);
    numerator_ = numerator / divisor;
    denominator_ = denominator / divisor;
  } else {
    mpq_class value(mpz_class(static_cast<long>(numerator)),
                    mpz_class(static_cast<long>(denominator)));
    value.canonicalize();
    *this = from_big(Big{value});
  }
}

Rational Rational::from_wide(Wide numerator, Wide denominator) {
  Rational result;
  if (numerator <= largest && numerator >= -largest && denominator <= largest) {
    result.numerator_ = static_cast<std::int64_t>(numerator);
    result.denominator_ = static_cast<std::int64_t>(denominator);
    return result;
  }
  const auto whole = [](Wide value) {
    const bool negative = value < 0;
    if (negative) value = -value;
    mpz_class high(static_cast<unsigned long>(value >> 64));
    high <<= 64;
    high += static_cast<unsigned long>(value);
    return negative ? mpz_class(-high) : high;
  };
  result.hold(new Big{mpq_class(whole(numerator), whole(denominator))});
  return result;
}

Rational Rational::from_big(Big value) {
  Rational result;
  const mpz_class& numerator = value.value.get_num();
  const mpz_class& denominator = value.value.get_den();
  if (fits(numerator) && fits(denominator)) {
    result.numerator_ = numerator.get_si();
    result.denominator_ = denominator.get_si();
  } else {
    result.hold(new Big(std::move(value)));
  }
  return result;
}

Rational::Big Rational::to_big(const Rational& value) {
  if (!value.is_small()) return value.big();
  return Big{mpq_class(mpz_class(static_cast<long>(value.numerator_)),
                       mpz_class(static_cast<long>(value.denominator_)))};
}

void Rational::hold(Big* value) {
  numerator_ = std::bit_cast<std::int64_t>(value);
  denominator_ = 0;
}

const Rational::Big& Rational::big() const {
  return *std::bit_cast<const Big*>(numerator_);
}

void Rational::copy_big(const Rational& other) {
  hold(new Big(other.big()));
}

void Rational::delete_big() noexcept {
  delete &big();
}

int Rational::sign_of_big() const {
  return sgn(big().value);
}

bool Rational::is_big_integer() const {
  return big().value.get_den() == 1;
}

std::int64_t Rational::numerator() const {
  if (!is_small()) throw std::overflow_error("a fraction is out of range");
  return numerator_;
}

std::int64_t Rational::denominator() const {
  if (!is_small()) throw std::overflow_error("a fraction is out of range");
  return denominator_;
}

Rational Rational::floor() const {
  if (is_small()) {
    if (denominator_ == 1) return *this;
    const std::int64_t quotient = numerator_ / denominator_;
    return Rational(quotient - (numerator_ % denominator_ < 0 ? 1 : 0), 1);
  }
  mpz_class quotient;
  mpz_fdiv_q(quotient.get_mpz_t(), big().value.get_num().get_mpz_t(),
             big().value.get_den().get_mpz_t());
  return from_big(Big{mpq_class(quotient)});
}

std::int64_t Rational::to_int64() const {
  if (!is_small() || denominator_ != 1) throw std::overflow_error("not a whole number of 64 bits");
  return numerator_;
}

std::string Rational::to_string() const {
  if (!is_small()) return big().value.get_str();
  const std::string whole = std::to_string(numerator_);
  return denominator_ == 1 ? whole : whole + "/" + std::to_string(denominator_);
}

Rational Rational::operator-() const {
  if (!is_small()) return from_big(Big{mpq_class(-big().value)});
  Rational result;
  result.numerator_ = -numerator_;
  result.denominator_ = denominator_;
  return result;
}

// Sums and products are reduced before they are formed, so that 128 bits always hold them: D. E.
// Knuth, The Art of Computer Programming, volume 2, section 4.5.1.
Rational Rational::sum_of(const Rational& a, const Rational& b) {
  if (!a.is_small() || !b.is_small()) {
    return from_big({mpq_class(to_big(a).value + to_big(b).value)});
  }
  const std::int64_t common = std::gcd(a.denominator_, b.denominator_);
  const std::int64_t a_part = a.denominator_ / common;
  const std::int64_t b_part = b.denominator_ / common;
  const Wide numerator =
      static_cast<Wide>(a.numerator_) * b_part + static_cast<Wide>(b.numerator_) * a_part;
  if (common == 1) return from_wide(numerator, static_cast<Wide>(a_part) * b_part);
  const std::int64_t divisor = std::gcd(static_cast<std::int64_t>(numerator % common), common);
  return from_wide(numerator / divisor, static_cast<Wide>(a_part) * (b.denominator_ / divisor));
}

Rational Rational::product_of(const Rational& a, const Rational& b) {
  if (!a.is_small() || !b.is_small()) {
    return from_big({mpq_class(to_big(a).value * to_big(b).value)});
  }
  const std::int64_t first = std::gcd(a.numerator_, b.denominator_);
  const std::int64_t second = std::gcd(b.numerator_, a.denominator_);
  return from_wide(static_cast<Wide>(a.numerator_ / first) * (b.numerator_ / second),
                   static_cast<Wide>(a.denominator_ / second) * (b.denominator_ / first));
}

Rational operator/(const Rational& a, const Rational& b) {
  if (b.is_zero()) throw std::domain_error("division by zero");
  if (!b.is_small()) {
    return Rational::from_big({mpq_class(Rational::to_big(a).value / Rational::to_big(b).value)});
  }
  Rational inverse;
  inverse.numerator_ = b.numerator_ < 0 ? -b.denominator_ : b.denominator_;
  inverse.denominator_ = b.numerator_ < 0 ? -b.numerator_ : b.numerator_;
  return a * inverse;
}

bool Rational::is_same_big(const Rational& a, const Rational& b) {
  return !a.is_small() && !b.is_small() && a.big().value == b.big().value;
}

std::strong_ordering Rational::order_of(const Rational& a, const Rational& b) {
  if (a.is_small() && b.is_small()) {
    const Wide left = static_cast<Wide>(a.numerator_) * b.denominator_;
    const Wide right = static_cast<Wide>(b.numerator_) * a.denominator_;
    return left <=> right;
  }
  return cmp(to_big(a).value, to_big(b).value) <=> 0;
}

Rational abs(const Rational& a) {
  return a.sign() < 0 ? -a : a;
}

Rational nearest_multiple(const Rational& a, const Rational& step) {
  const Rational steps = a / step;
  const Rational below = steps.floor();
  return (steps - below > Rational(1, 2) ? below + 1 : below) * step;
}

}  // namespace mullion::solver
