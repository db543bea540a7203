#include "engine/length/format.h"

#include <catch2/catch.hpp>

using namespace mullion;

TEST_CASE("one inch is 25.4 mm exactly (international yard and pound agreement, 1959)") {
  CHECK(parse_length("1 in", Unit::millimetre).value() ==
        parse_length("25.4 mm", Unit::inch).value());
  CHECK(inches(5) == millimetres(127));
}

TEST_CASE("every usual way of writing eight and a half inches is the same length") {
  const Length expected = sixty_fourths(8 * 64 + 32);
  for (const char* text : {"8.5", "8 1/2", "8-1/2\"", "8 1/2 in", "8 1/2 inches", " 8.50in ",
                           "17/2", "215.9 mm", "21.59cm", "8+1/2", "+8.5", "8 2/4 IN"}) {
    INFO(text);
    CHECK(parse_length(text, Unit::inch).value() == expected);
  }
  CHECK(parse_length("21.59", Unit::centimetre).value() == expected);
}

TEST_CASE("a hundredth of a millimetre and a sixty-fourth of an inch are whole ticks") {
  CHECK(parse_length("0.01 mm", Unit::inch).value().ticks() == 16);
  CHECK(parse_length("1/64", Unit::inch).value().ticks() == 635);
}

TEST_CASE("a value between two ticks is refused with the nearest two named") {
  const auto third = parse_length("1/3 in", Unit::inch);
  REQUIRE_FALSE(third);
  CHECK(third.error() ==
        "\"1/3 in\" is not a whole number of ticks (1/40640 in); the nearest are 6773/20320 and "
        "13547/40640 in");
  CHECK_FALSE(parse_length("0.0001 mm", Unit::inch));
}

TEST_CASE("text that is no length is refused") {
  for (const char* text : {"", " ", "abc", "8 1/0", "8 1/", "1/2/3", "8 1", "--8", "8..5", "1e3",
                           "8 ft", "99999999999999999999", "1000000000", "8 1/2 in in", "nan"}) {
    INFO(text);
    CHECK_FALSE(parse_length(text, Unit::inch));
  }
}

TEST_CASE("lengths print as the nearest mixed fraction of the increment") {
  const Scale sixteenths{Unit::inch, sixty_fourths(4)};
  CHECK(format_length(sixty_fourths(8 * 64 + 32), sixteenths).text == "8 1/2 in");
  CHECK(format_length(inches(3), sixteenths).text == "3 in");
  CHECK(format_length(sixty_fourths(-10), sixteenths).text == "-3/16 in");
  CHECK(format_number(Length(), sixteenths).text == "0");

  const LengthText odd = format_length(sixty_fourths(9), sixteenths);
  CHECK(odd.text == "1/8 in");
  CHECK_FALSE(odd.exact);
  CHECK(odd.remainder == sixty_fourths(1));
  CHECK(describe(sixty_fourths(9), sixteenths) == "9/64 in");

  const Scale half_mm{Unit::millimetre, Length::from_ticks(800)};
  CHECK(format_length(parse_length("215.5 mm", Unit::inch).value(), half_mm).text == "215.5 mm");
  CHECK_FALSE(format_length(parse_length("215.9 mm", Unit::inch).value(), half_mm).exact);
}

TEST_CASE("exact text reads back as the same length") {
  for (std::int64_t ticks : {0, 1, 7, 16, 635, 40640, 40641, 123456789, -5, -40640}) {
    for (Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
      const Length length = Length::from_ticks(ticks);
      INFO(format_exact(length, unit));
      CHECK(parse_length(format_exact(length, unit), unit).value() == length);
    }
  }
}

TEST_CASE("length arithmetic that leaves the range is an error") {
  const Length most = Length::from_ticks(INT64_MAX);
  CHECK_THROWS_AS(most + Length::from_ticks(1), std::overflow_error);
  CHECK_THROWS_AS(-most - Length::from_ticks(2), std::overflow_error);
  CHECK_THROWS_AS(most * 2, std::overflow_error);
  CHECK_FALSE(parse_length("999999999 in", Unit::inch));
}

TEST_CASE("rounding to a multiple takes the nearest, ties away from zero") {
  const Length step = Length::from_ticks(10);
  CHECK(round_to_multiple(Length::from_ticks(14), step).ticks() == 10);
  CHECK(round_to_multiple(Length::from_ticks(15), step).ticks() == 20);
  CHECK(round_to_multiple(Length::from_ticks(-14), step).ticks() == -10);
  CHECK(round_to_multiple(Length::from_ticks(-15), step).ticks() == -20);
  CHECK(round_to_multiple(Length::from_ticks(INT64_MAX - 7), step).ticks() == INT64_MAX - 7);
}

TEST_CASE("an exact text is read back as the same length, with its unit and without") {
  for (std::int64_t ticks = -50000; ticks < 90000; ticks += 37) {
    const Length length = Length::from_ticks(ticks);
    for (const Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
      const std::string number = exact_number(length, unit), text = format_exact(length, unit);
      CHECK(parse_length(number, unit) == length);
      CHECK(parse_length(text, Unit::inch) == length);
      CHECK(text.starts_with(number + " "));
    }
  }
}

TEST_CASE("a text that is not exact says about, and one that says nothing is exact") {
  const Scale sixteenths{Unit::inch, sixty_fourths(4)}, whole{Unit::millimetre, millimetres(1)};
  for (const Scale& scale : {sixteenths, whole}) {
    for (std::int64_t ticks = 1; ticks < 130000; ticks += 211) {
      const Length length = Length::from_ticks(ticks);
      for (const std::string& text : {describe(length, scale), describe_fine(length, scale.unit)}) {
        INFO(ticks << ": " << text);
        if (text.starts_with("less than ")) {
          CHECK(length < finest_mark(scale.unit));
          continue;
        }
        const bool about = text.starts_with("about ");
        const Length said = parse_length(text.substr(about ? 6 : 0), scale.unit).value();
        CHECK(about == (said != length));
        const Length off = said < length ? length - said : said - length;
        CHECK(off * 2 <= finest_mark(scale.unit));
      }
    }
  }
}

TEST_CASE("a length between steps is exact where a rule or a decimal says it, else about a mark") {
  const Scale sixteenths{Unit::inch, sixty_fourths(4)};
  CHECK(describe(sixty_fourths(33), sixteenths) == "33/64 in");
  CHECK(describe_number(sixty_fourths(33), sixteenths) == "33/64");
  CHECK(describe(millimetres(10), sixteenths) == "about 25/64 in");
  CHECK(describe(millimetres(10), {Unit::millimetre, millimetres(4)}) == "10 mm");
  CHECK(describe_fine(millimetres(10), Unit::inch) == "about 25/64 in");
  CHECK(describe_fine(Length::from_ticks(300), Unit::inch) == "less than 1/64 in");
  CHECK(describe_fine(sixty_fourths(1), Unit::inch) == "1/64 in");
}

TEST_CASE("a length is said the same whatever the steps of the rule are") {
  for (std::int64_t ticks = 0; ticks < 200000; ticks += 53) {
    const Length length = Length::from_ticks(ticks);
    const std::string inch = describe(length, {Unit::inch, sixty_fourths(4)});
    for (const int step : {1, 2})
      CHECK(describe(length, {Unit::inch, sixty_fourths(step)}) == inch);
    const std::string mm = describe(length, {Unit::millimetre, millimetres(1)});
    CHECK(describe(length, {Unit::millimetre, Length::from_ticks(ticks_per_mm / 2)}) == mm);
  }
  CHECK(describe(Length::from_ticks(1600 * 211 + 800), {Unit::millimetre, millimetres(1)}) ==
        "211.5 mm");
  CHECK(describe(sixty_fourths(1), {Unit::millimetre, millimetres(1)}) == "about 0.4 mm");
}

TEST_CASE("a measured length is taken to the nearest tick, and its text is read back as the same") {
  const Measured gauge = parse_measured("0.055", Unit::inch).value();
  CHECK(gauge.length == Length::from_ticks(2235));  // 2235.2
  CHECK_FALSE(gauge.exact);
  CHECK(measured_number(gauge.length, Unit::inch) == "0.055");
  CHECK(parse_measured("1/16 in", Unit::millimetre)->exact);
  CHECK(measured_number(sixty_fourths(4), Unit::inch) == "1/16");
  CHECK(parse_measured("11.4084062193 in", Unit::millimetre)->length == Length::from_ticks(463638));
  CHECK_FALSE(parse_measured("thick", Unit::inch));
  for (std::int64_t ticks = 1; ticks < 20000; ++ticks) {
    for (const Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
      const std::string text = measured_number(Length::from_ticks(ticks), unit);
      CHECK(parse_measured(text, unit)->length == Length::from_ticks(ticks));
      CHECK(text.size() <= 8);
    }
  }
}
