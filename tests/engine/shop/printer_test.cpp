#include <catch2/catch.hpp>
#include <cmath>

#include "engine/shop/printer_profile.h"

using namespace mullion;

namespace {

Length from_inches(double value) {
  return Length::from_ticks(std::llround(value * 40640));
}

}  // namespace

TEST_CASE("a perfect print needs no correction") {
  const CalibrationReading nominal = nominal_reading(inches(3), inches(4));
  CHECK(nominal.falling == inches(5));  // 3, 4, 5
  const auto correction = correction_from(nominal, nominal);
  REQUIRE(correction);
  CHECK(correction->scale_x == 1);
  CHECK(correction->scale_y == 1);
  CHECK(correction->skew == 0);
}

TEST_CASE("skew follows from the diagonals by the law of cosines") {
  // Sides 3 and 4 at 89 degrees: d^2 = 9 + 16 +/- 24 cos 89.
  const double c = std::cos(89 * std::acos(-1.0) / 180);
  const CalibrationReading leaning{inches(3), inches(4), from_inches(std::sqrt(25 + 24 * c)),
                                   from_inches(std::sqrt(25 - 24 * c))};
  const auto correction = correction_from(nominal_reading(inches(3), inches(4)), leaning);
  REQUIRE(correction);
  CHECK(correction->skew == Approx(c).margin(1e-4));
}

TEST_CASE("a print that was fitted to the page is refused") {
  const auto nominal = nominal_reading(inches(7), inches(9));
  const CalibrationReading fitted{from_inches(6.72), from_inches(8.64),
                                  from_inches(std::hypot(6.72, 8.64)),
                                  from_inches(std::hypot(6.72, 8.64))};
  const auto correction = correction_from(nominal, fitted);
  REQUIRE_FALSE(correction);
  CHECK(correction.error().find("fit to page") != std::string::npos);
}

TEST_CASE("a diagonal that does not belong to the sides is refused") {
  auto reading = nominal_reading(inches(7), inches(9));
  reading.falling = reading.rising = from_inches(11.9);
  CHECK_FALSE(correction_from(nominal_reading(inches(7), inches(9)), reading));
}

TEST_CASE("a profile is read back as it was written") {
  PrinterProfile profile;
  profile.name = "Back room <1> & more";
  profile.across = inches(7);
  profile.down = inches(9);
  profile.paper = "letter";
  profile.measured = {{*parse_reading("6.98", Unit::inch), *parse_reading("8 63/64", Unit::inch),
                       *parse_reading("11.37 in", Unit::inch),
                       *parse_reading("11.39", Unit::inch)}};
  const auto again = read_printer_text(write_printer(profile), "p.xml");
  REQUIRE(again);
  CHECK(again->name == profile.name);
  CHECK(again->paper == "letter");
  REQUIRE(again->measured.size() == 1);
  CHECK(again->measured[0].across == profile.measured[0].across);
  CHECK(again->measured[0].rising == profile.measured[0].rising);
  CHECK(again->correction.scale_x == Approx(6.98 / 7));
}

TEST_CASE("what is wrong with a profile is said with its place") {
  const auto profile = read_printer_text(
      "<printer version=\"1\" name=\"P\" unit=\"in\" across=\"7\" down=\"9\">\n"
      "  <measured across=\"nine\" down=\"9\" falling=\"11.4\" rising=\"11.4\"/>\n</printer>",
      "p.xml");
  REQUIRE_FALSE(profile);
  CHECK(profile.error().front().place.line == 2);
  CHECK_FALSE(read_printer_text("", "p.xml"));
  CHECK_FALSE(read_printer_text("<printer/>", "p.xml"));
}

TEST_CASE("a file of another kind is no printer profile, whatever it measures") {
  PrinterProfile printer;
  printer.across = inches(7);
  printer.down = inches(9);
  printer.measured = {nominal_reading(printer.across, printer.down)};
  std::string text = write_printer(printer);
  REQUIRE(read_printer_text(text, "p.xml"));
  for (std::size_t at = 0; (at = text.find("printer", at)) != std::string::npos;) {
    text.replace(at, 7, "plotter");
  }
  const auto profile = read_printer_text(text, "p.xml");
  REQUIRE_FALSE(profile);
  CHECK(profile.error().front().code == "printer-unknown-element");
}

namespace {

PrinterProfile letter_profile(std::vector<CalibrationReading> measured) {
  PrinterProfile profile;
  profile.across = inches(7);
  profile.down = inches(9);
  profile.measured = std::move(measured);
  return profile;
}

CalibrationReading reading(double across, double down, double falling, double rising) {
  return {from_inches(across), from_inches(down), from_inches(falling), from_inches(rising)};
}

// The sides and diagonals of a rectangle as a printer prints it (law of cosines).
CalibrationReading printed(double across, double down, double x, double y, double cosine) {
  const double a = across * x, b = down * y;
  return reading(a, b, std::sqrt(a * a + b * b + 2 * a * b * cosine),
                 std::sqrt(a * a + b * b - 2 * a * b * cosine));
}

}  // namespace

TEST_CASE("a print far out of square is believed only where two readings say so") {
  // A good printer whose falling diagonal was read as 11 1/2: skew 0.9 %.
  const CalibrationReading slip = reading(7, 9, 11.5, 11.4);
  const auto once = correction_of(letter_profile({slip}));
  REQUIRE_FALSE(once);
  CHECK(once.error().find("measure each length a second time") != std::string::npos);
  const auto disagreeing = correction_of(letter_profile({slip, reading(7, 9, 11.4, 11.4)}));
  REQUIRE_FALSE(disagreeing);
  CHECK(disagreeing.error().find("falling") != std::string::npos);
  const auto said_twice = correction_of(letter_profile({slip, slip}));
  REQUIRE(said_twice);
  CHECK(said_twice->skew == Approx((11.5 * 11.5 - 11.4 * 11.4) / (4 * 63)).margin(1e-4));
}

TEST_CASE("an assembled template makes the correction finer") {
  // A printer of x 1.003, y 0.998, skew 0.001, read to 1/64 in on the page; then a template of
  // 40 x 60 in, printed with that correction on upright sheets, and on sheets that lay across.
  const double x = 1.003, y = 0.998, skew = 0.001;
  const auto rough = [](double value) { return std::round(value * 64) / 64; };
  const CalibrationReading exact = printed(7, 9, x, y, skew);
  const CalibrationReading read{
      from_inches(rough(to_inches(exact.across))), from_inches(rough(to_inches(exact.down))),
      from_inches(rough(to_inches(exact.falling))), from_inches(rough(to_inches(exact.rising)))};
  for (const bool turned : {false, true}) {
    PrinterProfile profile = letter_profile({read, read});
    const auto first = correction_of(profile);
    REQUIRE(first);
    const double left_x = x / first->scale_x, left_y = y / first->scale_y;
    const double left_skew = skew - first->skew;
    const CalibrationReading whole = turned ? printed(40, 60, left_y, left_x, -left_skew)
                                            : printed(40, 60, left_x, left_y, left_skew);
    profile.assembled.push_back({inches(40), inches(60), whole, turned});
    const auto second = correction_of(read_printer_text(write_printer(profile), "p.xml").value());
    REQUIRE(second);
    CHECK(second->scale_x == Approx(x).margin(5e-6));
    CHECK(second->scale_y == Approx(y).margin(5e-6));
    CHECK(second->skew == Approx(skew).margin(5e-6));
    CHECK(std::abs(first->scale_x - x) > 1e-4);
  }
}

TEST_CASE("the calibration page's rectangle is the largest of whole inches or centimetres") {
  CHECK(calibration_sides(sixty_fourths(544), inches(11), Unit::inch).across == inches(7));
  CHECK(calibration_sides(sixty_fourths(544), inches(11), Unit::inch).down == inches(9));
  CHECK(calibration_sides(millimetres(210), millimetres(297), Unit::millimetre).across ==
        millimetres(170));
  CHECK(calibration_sides(millimetres(210), millimetres(297), Unit::millimetre).down ==
        millimetres(230));
  CHECK(calibration_sides(inches(24), inches(24), Unit::inch).across == inches(22));
}
