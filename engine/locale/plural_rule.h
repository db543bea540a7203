#pragma once

// Which plural form a number takes: the expression of a catalogue's header, in the subset of C that
// the GNU gettext manual states (section "Additional functions for plural forms"): n, numbers,
// parentheses, ! * / % + - < > <= >= == != && || ?:.

#include <cstdint>
#include <string_view>

namespace mullion {

// One form for 1 and one for the rest: English, German, Spanish.
inline constexpr std::string_view germanic_plural = "n != 1";

// The number of the form, from 0. Throws std::invalid_argument where the expression is none.
std::int64_t plural_form(std::string_view expression, std::int64_t n);

}  // namespace mullion
