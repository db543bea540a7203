#pragma once

// The elements of a job file as its text writes them, each with its place in the text, down to
// every attribute. Of text that was read as well-formed XML before (engine/xml/document.h).

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace mullion::edit {

inline constexpr std::string_view blanks = " \t\r\n";

struct Span {
  std::size_t begin = 0, end = 0;
};

struct WrittenValue {
  std::string_view name;
  Span whole;        // from the name to behind the closing quote
  Span raw;          // within the quotes
  std::string text;  // with references resolved
};

struct Markup {
  std::string_view name;
  Span name_span;
  Span all;                 // from "<" to behind the last ">"
  Span inside;              // between the tags; empty, at the end, where there is only one tag
  bool has_one_tag = true;  // <x/>
  std::vector<WrittenValue> attributes;
  std::vector<Markup> children;  // elements
  std::vector<Span> words;       // texts and CDATA sections that are not blank
  std::vector<Span> remarks;     // comments and processing instructions

  const WrittenValue* find(std::string_view attribute) const;
  std::string value(std::string_view attribute) const;  // tidied; empty where it is not stated
  const Markup* child(std::string_view element) const;  // the first
  bool holds_nothing() const { return children.empty() && words.empty() && remarks.empty(); }
};

// Views into the text, which must outlive it.
Markup read_markup(std::string_view text);

// The element whose child that is; null for the root and for what is not below it.
const Markup* parent_of(const Markup& root, const Markup& child);

// A value as it is written between quotes of that kind, and a text between tags.
std::string escaped_value(std::string_view text, char quote);
std::string escaped_text(std::string_view text);

}  // namespace mullion::edit
