#pragma once

// Lengths as they are set on a cutter or taken with a rule: in the scale's unit, rounded once to
// what a steady hand sets (engine/cuts/plan/settings.h).

#include <string>

#include "engine/length/format.h"
#include "engine/locale/locale.h"

namespace mullion {

struct ScaleText {
  std::string shows;  // "3 1/32 in"
  Length rounded_by;  // what is shown less what it should be
};

ScaleText scale_text(Length true_distance, Length zero, const Scale& scale,
                     const Locale& locale = {});

// A length on the piece, or by how much something is moved: "5/16 in".
std::string rule_text(Length length, const Scale& scale, const Locale& locale = {});

// The same of its size: never below zero.
std::string amount_text(Length amount, const Scale& scale, const Locale& locale = {});

}  // namespace mullion
