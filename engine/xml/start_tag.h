#pragma once

// The attributes of a start tag as the source text writes them, with their places.

#include <string_view>
#include <vector>

namespace mullion {

struct WrittenAttribute {
  std::string_view name;
  std::size_t offset = 0;  // of the name, in the text
  std::string_view raw;    // the value before references are resolved
  std::size_t raw_offset = 0;
};

// The start tag whose "<" is at `offset` of a text that was parsed as XML before.
std::vector<WrittenAttribute> written_attributes(std::string_view text, std::size_t offset);

}  // namespace mullion
