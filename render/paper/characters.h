#pragma once

// Where characters begin in UTF-8 text.

#include <string>

namespace mullion::paper {

// The start of the last character before `end` (> 0).
inline std::size_t character_before(const std::string& text, std::size_t end) {
  do {
    --end;
  } while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80);
  return end;
}

}  // namespace mullion::paper
