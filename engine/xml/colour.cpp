#include "engine/xml/colour.h"

#include <charconv>
#include <cstdio>

namespace mullion {

tl::expected<Colour, std::string> parse_colour(std::string_view text) {
  unsigned value = 0;
  bool good = text.size() == 7 && text.front() == '#';
  if (good) {
    const char* const end = text.data() + text.size();
    const auto [stopped, error] = std::from_chars(text.data() + 1, end, value, 16);
    good = error == std::errc() && stopped == end;
  }
  if (!good) {
    return tl::unexpected("\"" + std::string(text.substr(0, 60)) +
                          "\" is not a colour; expected # and six hexadecimal digits, such as "
                          "#e9e2d0");
  }
  return Colour{static_cast<std::uint8_t>(value >> 16), static_cast<std::uint8_t>(value >> 8),
                static_cast<std::uint8_t>(value)};
}

std::string format_colour(const Colour& colour) {
  char text[8];
  std::snprintf(text, sizeof text, "#%02x%02x%02x", colour.red, colour.green, colour.blue);
  return text;
}

}  // namespace mullion
