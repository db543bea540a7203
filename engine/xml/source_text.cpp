#include "engine/xml/source_text.h"

#include <algorithm>

namespace mullion {
namespace {

constexpr std::size_t block_size = 1024;

bool begins_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

}  // namespace

SourceText::SourceText(std::string_view text) : text_(text), line_starts_{0} {
  std::size_t characters = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i % block_size == 0) characters_before_block_.push_back(characters);
    if (begins_character(text[i])) ++characters;
    if (text[i] == '\n') line_starts_.push_back(i + 1);
  }
  if (text.size() % block_size == 0) characters_before_block_.push_back(characters);
}

std::size_t SourceText::characters_before(std::size_t offset) const {
  const std::size_t block = offset / block_size;
  return characters_before_block_[block] +
         count_characters(text_.substr(block * block_size, offset % block_size));
}

Place SourceText::place(std::size_t offset) const {
  offset = std::min(offset, text_.size());
  while (offset > 0 && offset < text_.size() && !begins_character(text_[offset])) --offset;
  const auto next = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const std::size_t column = characters_before(offset) - characters_before(*(next - 1));
  return {static_cast<int>(next - line_starts_.begin()), static_cast<int>(column) + 1};
}

std::optional<std::size_t> SourceText::first_bad_character() const {
  std::size_t offset = 0;
  while (offset < text_.size()) {
    const auto c = first_code_point(text_.substr(offset));
    if (!c || !is_xml_character(c->value)) return offset;
    offset += c->bytes;
  }
  return std::nullopt;
}

std::optional<CodePoint> first_code_point(std::string_view text) {
  if (text.empty()) return std::nullopt;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return CodePoint{lead, 1};
  const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return std::nullopt;
  char32_t value = lead & (0xFF >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return std::nullopt;
    value = (value << 6) | (byte(i) & 0x3F);
  }
  const bool overlong = (bytes == 3 && value < 0x800) || (bytes == 4 && value < 0x10000);
  const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
  if (overlong || surrogate || value > 0x10FFFF) return std::nullopt;
  return CodePoint{value, bytes};
}

bool is_xml_character(char32_t c) {
  if (c < 0x20) return c == '\t' || c == '\n' || c == '\r';
  return c <= 0xD7FF || (c >= 0xE000 && c <= 0xFFFD) || (c >= 0x10000 && c <= 0x10FFFF);
}

std::size_t count_characters(std::string_view utf8) {
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), begins_character));
}

}  // namespace mullion
