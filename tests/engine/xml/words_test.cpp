#include "engine/xml/words.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

using namespace mullion;

TEST_CASE("a factor is written back as it was written, where that is its plainest form") {
  for (const char* text : {"2", "3/2", "5/4", "1/100", "100", "0.381966", "0.618034", "1.618034",
                           "1.17", "0.0625", "1/3", "2/7", "12345/100000"}) {
    INFO(text);
    const auto read = parse_fraction(text);
    REQUIRE(read);
    const std::string written = format_fraction(*read);
    const bool is_plain = text != std::string("0.0625") && text != std::string("12345/100000") &&
                          text != std::string("1/100");
    if (is_plain) CHECK(written == text);
    const auto again = parse_fraction(written);
    REQUIRE(again);
    CHECK(again->numerator == read->numerator);
    CHECK(again->denominator == read->denominator);
  }
  CHECK(format_fraction(*parse_fraction("0.0625")) == "1/16");
  CHECK(format_fraction(*parse_fraction("1 1/2")) == "3/2");
  CHECK(format_fraction(*parse_fraction("12345/100000")) == "0.12345");
}

TEST_CASE("every fraction that can be read is read back from what is written of it") {
  for (std::int64_t denominator = 1; denominator < 2000; denominator += 7) {
    for (std::int64_t numerator = 1; numerator < 5000; numerator += 113) {
      const auto again = parse_fraction(format_fraction({numerator, denominator}));
      REQUIRE(again);
      CHECK(again->numerator * denominator == numerator * again->denominator);
    }
  }
}

// The golden section, (sqrt 5 - 1) / 2 = 0.6180339887..., to six decimals (Euclid, Elements VI,
// definition 3; the decimals are computed).
TEST_CASE("the golden section is one decimal in three forms that agree to six places") {
  const auto of = [](const char* text) {
    const Fraction f = parse_fraction(text).value();
    return static_cast<double>(f.numerator) / static_cast<double>(f.denominator);
  };
  const double exact = (std::sqrt(5.0) - 1) / 2;
  CHECK(std::abs(of("0.618034") - exact) < 5e-7);
  CHECK(std::abs(of("0.381966") - (1 - exact)) < 5e-7);
  CHECK(std::abs(of("1.618034") - 1 / exact) < 5e-7);
}
