#include "printed_words.h"

namespace printed {

using mullion::Length;

namespace {

const std::string length_pattern =
    "((?:[0-9]+ )?[0-9]+/[0-9]+ in|[0-9]+ in|[0-9]+(?:\\.[0-9]+)? mm|[0-9]+(?:\\.[0-9]+)? cm)";
const std::string numbers_pattern = "([0-9]+(?:, [0-9]+)*)";

}  // namespace

std::regex pattern(const std::string& text) {
  std::string out;
  for (const char c : text) {
    out += c == '~' ? length_pattern : c == '#' ? numbers_pattern : std::string(1, c);
  }
  return std::regex(out);
}

std::optional<std::smatch> found(const std::string& text, const std::regex& what) {
  std::smatch match;
  return std::regex_search(text, match, what) ? std::optional(match) : std::nullopt;
}

bool has(const std::string& text, const char* words) {
  return text.find(words) != std::string::npos;
}

std::vector<int> numbers_of(const std::string& list) {
  std::vector<int> out;
  static const std::regex number("[0-9]+");
  each(list, number, [&](const std::smatch& m) { out.push_back(std::stoi(m.str())); });
  return out;
}

Length length_of(const std::string& text) {
  return mullion::parse_length(text, mullion::Unit::inch).value();
}

std::string text_of(Length length) {
  return mullion::format_exact(length, mullion::Unit::millimetre);
}

}  // namespace printed
