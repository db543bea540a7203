#pragma once

// What a terminal does with text: colour, characters that it must not be sent, and the columns that
// a character takes.

#include <string>
#include <string_view>

namespace mullion::cli {

enum class Ink { strong, error, warning, note };

// Puts text in colour, or leaves it as it is.
class Paint {
 public:
  explicit Paint(bool coloured) : coloured_(coloured) {}
  std::string operator()(Ink ink, std::string_view text) const;

 private:
  bool coloured_;
};

// Whether text for this file descriptor is to be coloured: it is a terminal, TERM is set and is not
// "dumb", and NO_COLOR is unset or empty (the convention of no-color.org).
bool wants_colour(int descriptor);

// The text with every control character but tab and line feed, and every byte that is no UTF-8,
// replaced by U+FFFD, so that no name in a file can steer the terminal.
std::string printable(std::string_view text);

// Columns of a character on a terminal: 0 for a combining mark, 2 for a wide one.
int columns_of(char32_t character);

}  // namespace mullion::cli
