#pragma once

// Colours as a job file writes them: a # and six hexadecimal digits, in either case.

#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace mullion {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend bool operator==(const Colour&, const Colour&) = default;
};

// The error is one sentence, without a place.
tl::expected<Colour, std::string> parse_colour(std::string_view text);

// "#rrggbb" in lower case.
std::string format_colour(const Colour& colour);

}  // namespace mullion
