#pragma once

// Exact fractions.
//
// A Rational is kept in lowest terms with a positive denominator. It is stored as two 64-bit
// integers while they suffice and moves to GMP's mpq_class, and back, by itself; so nothing
// overflows and nothing is rounded. Dividing by zero throws std::domain_error. Whole numbers, the
// usual case, are added and multiplied in line.

#include <compare>
#include <concepts>
#include <cstdint>
#include <limits>
#include <string>
#include <utility>

namespace mullion::solver {

class Rational {
 public:
  Rational() = default;
  template <std::integral Integer>
  Rational(Integer whole) : numerator_(static_cast<std::int64_t>(whole)) {
    if (numerator_ == std::numeric_limits<std::int64_t>::min()) *this = Rational(numerator_, 1);
  }
  Rational(std::int64_t numerator, std::int64_t denominator);

  Rational(const Rational& other) : numerator_(other.numerator_), denominator_(other.denominator_) {
    if (!is_small()) copy_big(other);
  }
  Rational(Rational&& other) noexcept
      : numerator_(other.numerator_), denominator_(std::exchange(other.denominator_, 1)) {
    other.numerator_ = 0;
  }
  Rational& operator=(Rational other) noexcept {
    swap(*this, other);
    return *this;
  }
  ~Rational() {
    if (!is_small()) delete_big();
  }

  friend void swap(Rational& a, Rational& b) noexcept {
    std::swap(a.numerator_, b.numerator_);
    std::swap(a.denominator_, b.denominator_);
  }

  // False when numerator or denominator needs more than 64 bits.
  bool is_small() const { return denominator_ != 0; }
  // In lowest terms; the denominator is positive. Throw std::overflow_error unless is_small().
  std::int64_t numerator() const;
  std::int64_t denominator() const;

  bool is_zero() const { return numerator_ == 0; }
  int sign() const {  // -1, 0 or 1
    if (!is_small()) return sign_of_big();
    return numerator_ > 0 ? 1 : numerator_ < 0 ? -1 : 0;
  }
  bool is_integer() const { return denominator_ == 1 || (!is_small() && is_big_integer()); }
  Rational floor() const;
  // Throws std::overflow_error unless this is a whole number of 64 bits.
  std::int64_t to_int64() const;
  // "3", "-7/2".
  std::string to_string() const;

  Rational operator-() const;
  Rational& operator+=(const Rational& other) {
    std::int64_t sum = 0;
    if (!are_whole(*this, other) || __builtin_add_overflow(numerator_, other.numerator_, &sum) ||
        sum == least) {
      return *this = sum_of(*this, other);
    }
    numerator_ = sum;
    return *this;
  }
  Rational& operator-=(const Rational& other) { return *this += -other; }
  Rational& operator*=(const Rational& other) {
    std::int64_t product = 0;
    if (!are_whole(*this, other) ||
        __builtin_mul_overflow(numerator_, other.numerator_, &product) || product == least) {
      return *this = product_of(*this, other);
    }
    numerator_ = product;
    return *this;
  }
  Rational& operator/=(const Rational& other) { return *this = *this / other; }
  friend Rational operator+(Rational a, const Rational& b) { return std::move(a += b); }
  friend Rational operator-(Rational a, const Rational& b) { return std::move(a -= b); }
  friend Rational operator*(Rational a, const Rational& b) { return std::move(a *= b); }
  friend Rational operator/(const Rational& a, const Rational& b);

  friend bool operator==(const Rational& a, const Rational& b) {
    if (a.is_small() && b.is_small()) {
      return a.numerator_ == b.numerator_ && a.denominator_ == b.denominator_;
    }
    return is_same_big(a, b);
  }
  friend std::strong_ordering operator<=>(const Rational& a, const Rational& b) {
    if (are_whole(a, b)) return a.numerator_ <=> b.numerator_;
    return order_of(a, b);
  }

 private:
  struct Big;
  __extension__ using Wide = __int128;
  static constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();

  static bool are_whole(const Rational& a, const Rational& b) {
    return a.denominator_ == 1 && b.denominator_ == 1;
  }
  static Rational sum_of(const Rational& a, const Rational& b);
  static Rational product_of(const Rational& a, const Rational& b);
  static bool is_same_big(const Rational& a, const Rational& b);
  static std::strong_ordering order_of(const Rational& a, const Rational& b);
  static Rational from_wide(Wide numerator, Wide denominator);  // coprime, denominator > 0
  static Rational from_big(Big value);
  static Big to_big(const Rational& value);
  void hold(Big* value);
  const Big& big() const;
  void copy_big(const Rational& other);
  void delete_big() noexcept;
  int sign_of_big() const;
  bool is_big_integer() const;

  // Never the least of its type, so that every value can be negated. Where the denominator is zero,
  // the address of a Big that is owned.
  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;
};

Rational abs(const Rational& a);

// The multiple of `step` (> 0) nearest to `a`; halfway goes down.
Rational nearest_multiple(const Rational& a, const Rational& step);

}  // namespace mullion::solver
