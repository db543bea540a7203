#pragma once

// Where the tags of XML text that did not parse stop to match, for the message.

#include <cstddef>
#include <optional>
#include <string_view>

namespace mullion {

struct OpenElement {
  std::string_view name;
  std::size_t offset = 0;  // of its "<"
};

struct UnmatchedTag {
  std::string_view found;           // the end tag; empty: the text ends
  std::size_t offset = 0;           // of it
  std::optional<OpenElement> open;  // the innermost element that is open there
};

UnmatchedTag first_unmatched_tag(std::string_view text);

}  // namespace mullion
