#include "engine/shop/printer_correction.h"

#include <algorithm>
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

tl::expected<CalibrationReading, std::string> mean_of(const CalibrationReading& first,
                                                      const CalibrationReading& second) {
  struct Named {
    const char* name;
    Length CalibrationReading::*length;
  };
  CalibrationReading mean;
  for (const Named& named :
       {Named{"across", &CalibrationReading::across}, Named{"down", &CalibrationReading::down},
        Named{"falling", &CalibrationReading::falling},
        Named{"rising", &CalibrationReading::rising}}) {
    const Length a = first.*named.length, b = second.*named.length;
    const Length apart = a > b ? a - b : b - a;
    const Length most = std::max(sixty_fourths(1), Length::from_ticks(a.ticks() / 2000));
    if (apart > most) {
      return tl::unexpected(std::string("the two readings of ") + named.name +
                            " differ by more than a reading may: measure that one again");
    }
    mean.*named.length = Length::from_ticks((a.ticks() + b.ticks()) / 2);
  }
  return mean;
}

Correction together(const Correction& used, const Correction& left, bool turned) {
  const double x = turned ? left.scale_y : left.scale_x, y = turned ? left.scale_x : left.scale_y;
  return {used.scale_x * x, used.scale_y * y, used.skew + (turned ? -left.skew : left.skew)};
}

std::string words_for(const Correction& correction) {
  const auto side = [](const char* name, double scale) {
    char text[64];
    const double off = (scale - 1) * 100;
    if (std::abs(off) < 0.005) return std::string(name) + " true";
    std::snprintf(text, sizeof text, "%s %.2f %% too %s", name, std::abs(off),
                  off > 0 ? "long" : "short");
    return std::string(text);
  };
  char skew[64];
  std::snprintf(skew, sizeof skew, "out of square by %.2f %%", std::abs(correction.skew) * 100);
  return side("across", correction.scale_x) + ", " + side("down", correction.scale_y) + ", " + skew;
}

}  // namespace mullion
