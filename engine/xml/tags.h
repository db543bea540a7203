#pragma once

// The tags of XML text as its source writes them, with their places, which pugixml does not keep:
// the attributes of a start tag, and, for the message, where tags stop to match in text that did
// not parse.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace mullion {

struct WrittenAttribute {
  std::string_view name;
  std::size_t offset = 0;  // of the name, in the text
  std::string_view raw;    // the value before references are resolved
  std::size_t raw_offset = 0;
};

// Of the start tag whose "<" is at `offset` of a text that was parsed as XML before.
std::vector<WrittenAttribute> written_attributes(std::string_view text, std::size_t offset);

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
