#pragma once

// Exact fractions.
//
// A Rational is kept in lowest terms with a positive denominator. It is stored as two 64-bit
// integers while they suffice and moves to GMP's mpq_class, and back, by itself; so nothing
// overflows and nothing is rounded. Dividing by zero throws std::domain_error.

#include <compare>
#include <concepts>
#include <cstdint>
#include <string>
#include <utility>

namespace mullion::solver {

class Rational {
 public:
  Rational() = default;
  template <std::integral Integer>
  Rational(Integer whole) : Rational(static_cast<std::int64_t>(whole), 1) {}
  Rational(std::int64_t numerator, std::int64_t denominator);

  Rational(const Rational& other) : numerator_(other.numerator_), denominator_(other.denominator_) {
    if (other.big_ != nullptr) copy_big(other);
  }
  Rational(Rational&& other) noexcept
      : numerator_(other.numerator_),
        denominator_(other.denominator_),
        big_(std::exchange(other.big_, nullptr)) {}
  Rational& operator=(Rational other) noexcept {
    swap(*this, other);
    return *this;
  }
  ~Rational() {
    if (big_ != nullptr) delete_big();
  }

  friend void swap(Rational& a, Rational& b) noexcept {
    std::swap(a.numerator_, b.numerator_);
    std::swap(a.denominator_, b.denominator_);
    std::swap(a.big_, b.big_);
  }

  // False when numerator or denominator needs more than 64 bits.
  bool is_small() const { return big_ == nullptr; }
  // In lowest terms; the denominator is positive. Throw std::overflow_error unless is_small().
  std::int64_t numerator() const;
  std::int64_t denominator() const;

  bool is_zero() const { return big_ == nullptr && numerator_ == 0; }
  int sign() const;  // -1, 0 or 1
  bool is_integer() const;
  Rational floor() const;
  // Throws std::overflow_error unless this is a whole number of 64 bits.
  std::int64_t to_int64() const;
  // "3", "-7/2".
  std::string to_string() const;

  Rational operator-() const;
  friend Rational operator+(const Rational& a, const Rational& b);
  friend Rational operator-(const Rational& a, const Rational& b);
  friend Rational operator*(const Rational& a, const Rational& b);
  friend Rational operator/(const Rational& a, const Rational& b);
  Rational& operator+=(const Rational& other) { return *this = *this + other; }
  Rational& operator-=(const Rational& other) { return *this = *this - other; }
  Rational& operator*=(const Rational& other) { return *this = *this * other; }
  Rational& operator/=(const Rational& other) { return *this = *this / other; }

  friend bool operator==(const Rational& a, const Rational& b);
  friend std::strong_ordering operator<=>(const Rational& a, const Rational& b);

 private:
  struct Big;
  __extension__ using Wide = __int128;

  static Rational from_wide(Wide numerator, Wide denominator);  // coprime, denominator > 0
  static Rational from_big(Big value);
  static Big to_big(const Rational& value);
  void copy_big(const Rational& other);
  void delete_big() noexcept;

  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;
  Big* big_ = nullptr;  // owned; when set it holds the value and the two integers mean nothing
};

Rational abs(const Rational& a);

// The multiple of `step` (> 0) nearest to `a`; halfway goes down.
Rational nearest_multiple(const Rational& a, const Rational& step);

}  // namespace mullion::solver
