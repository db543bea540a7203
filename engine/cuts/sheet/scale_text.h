#pragma once

// What a scale of the cutter shows for a true distance: the nearest division, and what is left.

#include <string>

#include "engine/length/format.h"
#include "engine/locale/locale.h"

namespace mullion {

struct ScaleText {
  std::string shows;      // "3 1/16 in"
  std::string remainder;  // "+ 0.4 mm", to a hundredth; empty where the division is exact
  Length exact_remainder;

  std::string all() const { return remainder.empty() ? shows : shows + " " + remainder; }
};

ScaleText scale_text(Length true_distance, Length zero, const Scale& scale,
                     const Locale& locale = {});

// Without the unit: "3 1/16 + 0.4 mm".
std::string scale_number(Length true_distance, Length zero, const Scale& scale);

// By how much: "5/16 in", never below zero.
std::string amount_text(Length amount, const Scale& scale, const Locale& locale = {});

}  // namespace mullion
