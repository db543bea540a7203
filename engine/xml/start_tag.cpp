#include "engine/xml/start_tag.h"

namespace mullion {

std::vector<WrittenAttribute> written_attributes(std::string_view text, std::size_t offset) {
  constexpr std::string_view blanks = " \t\r\n";
  std::vector<WrittenAttribute> out;
  std::size_t at = text.find_first_of(" \t\r\n/>", offset);
  for (;;) {
    at = text.find_first_not_of(blanks, at);
    if (at >= text.size() || text[at] == '/' || text[at] == '>') return out;
    const std::size_t name_end = text.find_first_of(" \t\r\n=", at);
    const std::size_t quote = text.find_first_of("\"'", name_end);
    if (quote == std::string_view::npos) return out;
    const std::size_t end = text.find(text[quote], quote + 1);
    if (end == std::string_view::npos) return out;
    out.push_back(
        {text.substr(at, name_end - at), at, text.substr(quote + 1, end - quote - 1), quote + 1});
    at = end + 1;
  }
}

}  // namespace mullion
