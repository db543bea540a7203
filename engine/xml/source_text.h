#pragma once

// A text and the places in it. Lines end at a line feed; columns count characters (Unicode code
// points); both count from 1.

#include <optional>
#include <string_view>
#include <vector>

#include "engine/xml/problem.h"

namespace mullion {

class SourceText {
 public:
  // Keeps a view: the text must outlive this.
  explicit SourceText(std::string_view text);

  std::string_view text() const { return text_; }
  // Of the character that holds the byte at `offset`; past the end: just after the last character.
  Place place(std::size_t offset) const;
  // Offset of the first byte that does not begin a well-formed UTF-8 character which XML 1.0
  // allows (section 2.2, production Char).
  std::optional<std::size_t> first_bad_character() const;

 private:
  std::size_t characters_before(std::size_t offset) const;

  std::string_view text_;
  std::vector<std::size_t> line_starts_;
  std::vector<std::size_t> characters_before_block_;
};

// The code point at the head of `text` and its length in bytes; nothing where it is not
// well-formed UTF-8 (RFC 3629).
struct CodePoint {
  char32_t value = 0;
  std::size_t bytes = 0;
};
std::optional<CodePoint> first_code_point(std::string_view text);

// Whether XML 1.0 allows the character in a document.
bool is_xml_character(char32_t c);

std::size_t count_characters(std::string_view utf8);

}  // namespace mullion
