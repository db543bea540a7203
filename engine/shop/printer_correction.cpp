#include "engine/shop/printer_correction.h"

#include <cmath>
#include <cstdio>

namespace mullion {
namespace {

double square(Length length) {
  const double value = to_inches(length);
  return value * value;
}

std::string percent(double part) {
  char text[32];
  std::snprintf(text, sizeof text, "%+.1f %%", part * 100);
  return text;
}

// Both diagonals follow from the sides and one diagonal; a slip of the reader shows here.
constexpr double largest_contradiction = 0.005;

}  // namespace

CalibrationReading nominal_reading(Length across, Length down) {
  const double diagonal =
      std::hypot(static_cast<double>(across.ticks()), static_cast<double>(down.ticks()));
  const Length rounded = Length::from_ticks(std::llround(diagonal));
  return {across, down, rounded, rounded};
}

tl::expected<Correction, std::string> correction_from(const CalibrationReading& nominal,
                                                      const CalibrationReading& measured) {
  const Length zero;
  if (measured.across <= zero || measured.down <= zero || measured.falling <= zero ||
      measured.rising <= zero) {
    return tl::unexpected(std::string("every measured length must be more than nothing"));
  }
  Correction correction;
  correction.scale_x = to_inches(measured.across) / to_inches(nominal.across);
  correction.scale_y = to_inches(measured.down) / to_inches(nominal.down);
  const double sides = to_inches(measured.across) * to_inches(measured.down);
  correction.skew = (square(measured.falling) - square(measured.rising)) / (4 * sides);
  for (const auto& [what, off] :
       {std::pair{"across", correction.scale_x - 1}, std::pair{"down", correction.scale_y - 1},
        std::pair{"out of square", correction.skew}}) {
    if (std::abs(off) <= largest_correction) continue;
    return tl::unexpected("the print is " + percent(off) + " " + what +
                          ", more than 3 % off: \"fit to page\" was probably on; print the page "
                          "again at 100 %, and measure again");
  }
  const double sum = square(measured.falling) + square(measured.rising);
  const double expected = 2 * (square(measured.across) + square(measured.down));
  if (std::abs(std::sqrt(sum / expected) - 1) > largest_contradiction) {
    return tl::unexpected(
        std::string("the diagonals do not belong to these sides: one of the four lengths was read "
                    "or typed wrongly; measure again"));
  }
  return correction;
}

}  // namespace mullion
