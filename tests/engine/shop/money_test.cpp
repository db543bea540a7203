#include "engine/shop/money.h"

#include <catch2/catch.hpp>

namespace {

using namespace mullion::price;

Amount amount(const char* text) {
  return parse_amount(text, 6).value();
}

TEST_CASE("half a cent goes up, or to the even cent, as the shop says") {
  const Currency euro;
  CHECK(rounded(amount("0.125"), euro, Rounding::half_up).units == 13);
  CHECK(rounded(amount("0.125"), euro, Rounding::half_even).units == 12);
  CHECK(rounded(amount("0.135"), euro, Rounding::half_even).units == 14);
  CHECK(rounded(amount("0.134999"), euro, Rounding::half_up).units == 13);
  CHECK(rounded(-amount("0.125"), euro, Rounding::half_up).units == -13);
}

TEST_CASE("a tenth added ten times is one") {
  Amount sum = 0;
  for (int i = 0; i < 10; ++i) sum += amount("0.1");
  CHECK(sum == 1);
}

TEST_CASE("prices go to the nearest coin") {
  const Currency franc{"CHF", "", false, 2};
  CHECK(rounded_to({1272}, {5}, Rounding::half_up).units == 1270);
  CHECK(rounded_to({1273}, {5}, Rounding::half_up).units == 1275);
  CHECK(rounded_to({1250}, {100}, Rounding::half_even).units == 1200);
  CHECK(rounded_to({1350}, {100}, Rounding::half_even).units == 1400);
}

TEST_CASE("amounts are read as they are written or not at all") {
  CHECK(amount("12.5") == Amount(25, 2));
  for (const char* text : {"", ".5", "5.", "-1", "1e3", "1,5", "1.2345678", "1234567890", " 1"}) {
    INFO(text);
    CHECK_FALSE(parse_amount(text, 6).has_value());
  }
}

TEST_CASE("money is written in its currency") {
  CHECK(format({1250}, {"EUR", "", false, 2}) == "12.50 EUR");
  CHECK(format({5}, {"EUR", "\xE2\x82\xAC", false, 2}) ==
        "\xE2\x82\xAC"
        "0.05");
  CHECK(format({1250}, {"SEK", "kr", true, 2}) == "12.50 kr");
  CHECK(format({1250}, {"JPY", "", false, 0}) == "1250 JPY");
  CHECK(format({-1250}, {"EUR", "", false, 2}) ==
        "\xE2\x88\x92"
        "12.50 EUR");
  CHECK(format_rate(amount("0.0425"), {}) == "0.0425");
  CHECK(format_rate(amount("0.4"), {}) == "0.40");
  CHECK(format_rate(amount("120"), {"JPY", "", false, 0}) == "120");
}

TEST_CASE("more money than there is is refused") {
  CHECK_THROWS_AS(rounded(amount("999999999") * 1'000'000'000, {}, Rounding::half_up),
                  std::overflow_error);
}

}  // namespace
