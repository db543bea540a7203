#pragma once

// Small texts of a job file: tidied blanks, names, relative paths, numbers. Nothing here knows of
// XML; each function refuses by returning nothing or a sentence.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/length/format.h"

namespace mullion {

// Blanks trimmed at the ends and single within.
std::string tidy(std::string_view text);
// Blanks trimmed at the ends; lines kept, each ended by a line feed.
std::string tidy_lines(std::string_view text);

bool begins_with_letter(std::string_view text);  // of the Latin alphabet

// Letters and digits of any script, hyphens and underscores; at least one.
bool is_name(std::string_view text);

// The text as a name: what a name may not hold becomes a hyphen. Not longer than an id with room for
// a number; may be empty.
std::string name_from(std::string_view text);

// What is wrong with a path that must name a file in the folder of the job file or below it, as
// "expected ..."; empty when nothing is.
std::string path_fault(std::string_view path);

// The unit as our files name it: in, mm, cm.
const char* word_for(Unit unit);

// A day of the calendar as YYYY-MM-DD.
bool is_date(std::string_view text);

struct Fraction {
  std::int64_t numerator = 0, denominator = 1;
};
// "2", "3/2", "1 1/2", "1.5"; not negative; in lowest terms.
std::optional<Fraction> parse_fraction(std::string_view text);
// "3/2", "0.381966": a decimal where that is exact and the fraction is finer than a rule's marks.
std::string format_fraction(const Fraction& fraction);

// "-0.5", "2", ".25"; no exponent.
std::optional<double> parse_decimal(std::string_view text);
std::string format_decimal(double value);

}  // namespace mullion
