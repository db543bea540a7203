#pragma once

// Where characters begin in UTF-8 text, and what of a text fits a width.

#include <string>

namespace mullion::paper {

// The start of the last character before `end` (> 0).
inline std::size_t character_before(const std::string& text, std::size_t end) {
  do {
    --end;
  } while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80);
  return end;
}

// The longest beginning of the text that fits, ended by an ellipsis where it was cut; `width_of`
// gives the width of a text in the units of `width`.
template <class WidthOf>
std::string longest_fitting(const std::string& text, double width, WidthOf width_of) {
  if (width_of(text) <= width) return text;
  for (std::size_t end = text.size(); end > 0;) {
    end = character_before(text, end);
    std::string shorter = text.substr(0, end) + "\xE2\x80\xA6";
    if (width_of(shorter) <= width) return shorter;
  }
  return {};
}

}  // namespace mullion::paper
