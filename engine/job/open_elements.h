#pragma once

// Which element is open at a place in XML text that did not parse, for the message.

#include <cstddef>
#include <optional>
#include <string_view>

namespace mullion {

struct OpenElement {
  std::string_view name;
  std::size_t offset = 0;  // of its "<"
};

// The innermost element that was begun before `offset` and is not ended before the end tag at or
// just before `offset`. Nothing where none is open.
std::optional<OpenElement> innermost_open_element(std::string_view text, std::size_t offset);

}  // namespace mullion
