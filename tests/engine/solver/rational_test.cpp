// Exact fractions against GMP (the GNU Multiple Precision library) on random values.

#include "engine/solver/rational.h"

#include <gmpxx.h>

#include <catch2/catch.hpp>
#include <limits>
#include <random>
#include <stdexcept>

using mullion::solver::Rational;

namespace {

struct Pair {
  Rational ours;
  mpq_class theirs;
};

bool agree(const Rational& ours, const mpq_class& theirs) {
  return ours.to_string() == theirs.get_str();
}

// Small, middling and very large numerators and denominators alike.
std::int64_t random_whole(std::mt19937_64& random) {
  const std::int64_t value = static_cast<std::int64_t>(random());
  return value >> std::uniform_int_distribution<int>(0, 62)(random);
}

Pair random_pair(std::mt19937_64& random) {
  const std::int64_t numerator = random_whole(random);
  std::int64_t denominator = random_whole(random);
  if (denominator == 0) denominator = 1;
  mpq_class theirs(mpz_class(static_cast<long>(numerator)),
                   mpz_class(static_cast<long>(denominator)));
  theirs.canonicalize();
  return {Rational(numerator, denominator), theirs};
}

int sign(std::strong_ordering order) {
  return order < 0 ? -1 : order > 0 ? 1 : 0;
}

}  // namespace

TEST_CASE("fractions agree with GMP in every operation, beyond 64 bits and back") {
  std::mt19937_64 random(1);
  int large = 0, back = 0;
  for (int i = 0; i < 20000; ++i) {
    const Pair a = random_pair(random), b = random_pair(random);
    REQUIRE(agree(a.ours, a.theirs));
    REQUIRE(agree(a.ours + b.ours, a.theirs + b.theirs));
    REQUIRE(agree(a.ours - b.ours, a.theirs - b.theirs));
    REQUIRE(agree(a.ours * b.ours, a.theirs * b.theirs));
    REQUIRE(agree(-a.ours, -a.theirs));
    REQUIRE(sign(a.ours <=> b.ours) == sgn(a.theirs - b.theirs));
    REQUIRE((a.ours == b.ours) == (a.theirs == b.theirs));
    REQUIRE(a.ours.sign() == sgn(a.theirs));
    if (!b.ours.is_zero()) REQUIRE(agree(a.ours / b.ours, a.theirs / b.theirs));
    const Rational product = a.ours * b.ours;
    if (product.is_small()) continue;
    ++large;
    REQUIRE(agree(product + a.ours, a.theirs * b.theirs + a.theirs));
    const Rational returned = product / b.ours;
    REQUIRE(returned == a.ours);
    if (returned.is_small()) ++back;
  }
  CHECK(large > 5000);
  CHECK(back > 5000);
}

TEST_CASE("a floor is the largest whole number that is not above") {
  std::mt19937_64 random(2);
  for (int i = 0; i < 5000; ++i) {
    const Pair a = random_pair(random), b = random_pair(random);
    for (const Pair& value : {a, Pair{a.ours * b.ours, a.theirs * b.theirs}}) {
      mpz_class floor;
      mpz_fdiv_q(floor.get_mpz_t(), value.theirs.get_num().get_mpz_t(),
                 value.theirs.get_den().get_mpz_t());
      REQUIRE(value.ours.floor().to_string() == floor.get_str());
      REQUIRE(value.ours.floor().is_integer());
    }
  }
}

TEST_CASE("fractions are kept in lowest terms with a positive denominator") {
  const Rational value(6, -4);
  CHECK(value.numerator() == -3);
  CHECK(value.denominator() == 2);
  CHECK(value.to_string() == "-3/2");
  CHECK(Rational(8, 4).to_int64() == 2);
  CHECK(Rational(0, -5) == 0);
}

TEST_CASE("the ends of 64 bits are no ends of fractions") {
  const Rational most = std::numeric_limits<std::int64_t>::max();
  const Rational least = std::numeric_limits<std::int64_t>::min();
  CHECK((most + 1).to_string() == "9223372036854775808");
  CHECK(least.to_string() == "-9223372036854775808");
  CHECK((-least).to_string() == "9223372036854775808");
  CHECK((most + 1 - 1).to_int64() == std::numeric_limits<std::int64_t>::max());
  CHECK(most < most + 1);
  CHECK(least - 1 < least);
  CHECK(Rational(1, std::numeric_limits<std::int64_t>::min()).to_string() ==
        "-1/9223372036854775808");
}

TEST_CASE("what cannot be told in 64 bits, and a division by zero, are refused") {
  CHECK_THROWS_AS(Rational(1, 2).to_int64(), std::overflow_error);
  const Rational large = Rational(std::numeric_limits<std::int64_t>::max()) * 2;
  CHECK_THROWS_AS(large.to_int64(), std::overflow_error);
  CHECK_THROWS_AS(large.numerator(), std::overflow_error);
  CHECK_THROWS_AS(Rational(1) / Rational(0), std::domain_error);
  CHECK_THROWS_AS(Rational(1, 0), std::domain_error);
}

TEST_CASE("the nearest multiple of a step, halfway down") {
  using mullion::solver::nearest_multiple;
  CHECK(nearest_multiple(Rational(7), 5) == 5);
  CHECK(nearest_multiple(Rational(8), 5) == 10);
  CHECK(nearest_multiple(Rational(5, 2), 5) == 0);
  CHECK(nearest_multiple(Rational(-5, 2), 5) == -5);
  CHECK(nearest_multiple(Rational(-1), 5) == 0);
}
