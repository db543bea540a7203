#include "engine/xml/tags.h"

#include <algorithm>

namespace mullion {
namespace {

std::size_t after(std::string_view text, std::string_view mark, std::size_t from) {
  const std::size_t found = text.find(mark, from);
  return found == std::string_view::npos ? text.size() : found + mark.size();
}

// Just after the ">" of the tag that begins at `from`, quoted values skipped.
std::size_t after_tag(std::string_view text, std::size_t from) {
  char quote = '\0';
  for (std::size_t i = from; i < text.size(); ++i) {
    if (quote != '\0') {
      if (text[i] == quote) quote = '\0';
    } else if (text[i] == '"' || text[i] == '\'') {
      quote = text[i];
    } else if (text[i] == '>') {
      return i + 1;
    }
  }
  return text.size();
}

}  // namespace

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

UnmatchedTag first_unmatched_tag(std::string_view text) {
  std::vector<OpenElement> open;
  const auto innermost = [&] { return open.empty() ? std::nullopt : std::optional(open.back()); };
  std::size_t at = text.find('<');
  while (at != std::string_view::npos) {
    const std::string_view rest = text.substr(at);
    std::size_t end = 0;
    if (rest.starts_with("<!--")) {
      end = after(text, "-->", at);
    } else if (rest.starts_with("<![CDATA[")) {
      end = after(text, "]]>", at);
    } else if (rest.starts_with("<?")) {
      end = after(text, "?>", at);
    } else {
      const bool is_end_tag = rest.starts_with("</");
      end = after_tag(text, at);
      const std::size_t name_at = at + (is_end_tag ? 2 : 1);
      const std::size_t name_end = std::min(text.find_first_of(" \t\r\n/>", name_at), text.size());
      const std::string_view name = text.substr(name_at, name_end - name_at);
      if (!is_end_tag) {
        if (!text.substr(0, end).ends_with("/>")) open.push_back({name, at});
      } else if (!open.empty() && open.back().name == name) {
        open.pop_back();
      } else {
        return {text.substr(at, end - at), at, innermost()};
      }
    }
    at = text.find('<', end);
  }
  return {{}, text.size(), innermost()};
}

}  // namespace mullion
