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
  profile.measured = {*parse_reading("6.98", Unit::inch), *parse_reading("8 63/64", Unit::inch),
                      *parse_reading("11.36 in", Unit::inch), *parse_reading("11.39", Unit::inch)};
  const auto again = read_printer_text(write_printer(profile), "p.xml");
  REQUIRE(again);
  CHECK(again->name == profile.name);
  CHECK(again->measured.across == profile.measured.across);
  CHECK(again->measured.rising == profile.measured.rising);
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
  printer.measured = nominal_reading(printer.across, printer.down);
  std::string text = write_printer(printer);
  REQUIRE(read_printer_text(text, "p.xml"));
  for (std::size_t at = 0; (at = text.find("printer", at)) != std::string::npos;) {
    text.replace(at, 7, "plotter");
  }
  const auto profile = read_printer_text(text, "p.xml");
  REQUIRE_FALSE(profile);
  CHECK(profile.error().front().code == "printer-unknown-element");
}
