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

// What is measured and not cut, such as the thickness of a board: to the nearest tick.
struct Measured {
  Length length;
  bool exact = true;  // false where the text is no whole number of ticks
};
tl::expected<Measured, std::string> parse_measured(std::string_view text, Unit unit);

// --- texts -----------------------------------------------------------------------------------
// A length is said on one scale in one unit: exactly, or rounded once and said to be "about" so
// much. Each kind of text has one function here; engine/locale says the same in other languages.

// Exact in any case: the shortest of a mixed fraction of up to 1/64 in or a decimal that says the
// length exactly in the unit, else a fraction over ticks ("5/40640 in"). parse_length reads it
// back.
std::string format_exact(Length length, Unit unit);
// The same without the unit: "8 1/2".
std::string exact_number(Length length, Unit unit);

// What people read. Exact where the length is whole steps of the scale, or is read off some rule (a
// mixed fraction of up to 1/64 in, hundredths of a millimetre, thousandths of an inch); else the
// finest mark of any rule that is nearest, and "about" before it. So a length is the same on every
// output in one unit.
std::string describe(Length length, const Scale& scale);
std::string describe_number(Length length, const Scale& scale);  // without the unit

// The same of a deviation; "less than 1/64 in" where it would be none.
std::string describe_fine(Length length, Unit unit);

// A measured length: as exact_number where that is short, else the shortest decimal from which
// parse_measured makes it.
std::string measured_number(Length length, Unit unit);

// Of any rule, whatever a job measures with: 1/64 in or 0.01 mm.
Length finest_mark(Unit unit);
// The nearest multiple of it.
Length to_finest_mark(Length length, Unit unit);

// What a scale is set to: its nearest step, as a mixed fraction (inches) or a decimal (millimetres,
// centimetres), and what is left.
struct LengthText {
  std::string text;   // "8 1/2 in", "215.9 mm"
  bool exact = true;  // false when the length lies between two steps of the scale
  Length remainder;   // length minus what the text says; zero when exact
};
LengthText format_length(Length length, const Scale& scale);
LengthText format_number(Length length, const Scale& scale);  // without the unit
// What describe_number says, without "about".
LengthText format_readable(Length length, const Scale& scale);

}  // namespace mullion
