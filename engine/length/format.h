#pragma once

// Lengths as a framer writes and reads them.
//
// Parsing accepts, with a unit or in a default one: `8`, `8.5`, `8 1/2`, `8-1/2"`, `1/2 in`,
// `8 1/2 inches`, `215.9 mm`, `21.59cm`. Parsing is exact: a value that is not a whole number of
// ticks is refused with the nearest two values named. The range is +/- `longest_input`.

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "engine/length/length.h"

namespace mullion {

enum class Unit { inch, millimetre, centimetre };

// What a job measures with: a unit, and the finest step that is read off the rule.
struct Scale {
  Unit unit = Unit::inch;
  Length increment = sixty_fourths(4);  // 1/16 in

  friend bool operator==(const Scale&, const Scale&) = default;
};

inline constexpr Length longest_input = millimetres(100'000);

// `unit` applies where the text names none. The error is one sentence, without a place.
tl::expected<Length, std::string> parse_length(std::string_view text, Unit unit);

struct LengthText {
  std::string text;   // "8 1/2 in", "215.9 mm"
  bool exact = true;  // false when the length lies between two steps of the scale
  Length remainder;   // length minus what the text says; zero when exact
};

// The nearest multiple of the scale's increment, as a mixed fraction (inches) or a decimal
// (millimetres, centimetres), with the unit. A tie rounds away from zero.
LengthText format_length(Length length, const Scale& scale);

// As above without the unit: "8 1/2".
LengthText format_number(Length length, const Scale& scale);

// Of any rule, whatever a job measures with: 1/64 in or 0.01 mm.
Length finest_mark(Unit unit);
Length to_finest_mark(Length length, Unit unit);

// The text alone; an inexact value gets a leading "about ".
std::string describe(Length length, const Scale& scale);

// Exact in any case: the shortest of a mixed fraction of up to 1/64 in or a decimal that says the
// length exactly in the unit, else a fraction over ticks ("5/40640 in"). parse_length reads it
// back.
std::string format_exact(Length length, Unit unit);

}  // namespace mullion
