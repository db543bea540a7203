#include "cli/file_kind.h"

#include <algorithm>
#include <fstream>
#include <string_view>

namespace mullion::cli {
namespace {

constexpr std::size_t longest_beginning = 1 << 16;  // bytes, comments among them

// What follows "<" of the first element.
std::string_view first_element(std::string_view text) {
  for (std::size_t at = text.find('<'); at != std::string_view::npos; at = text.find('<', at)) {
    const std::string_view rest = text.substr(at + 1);
    if (!rest.starts_with('?') && !rest.starts_with('!')) return rest;
    const std::string_view end = rest.starts_with("!--") ? "-->" : ">";
    at = text.find(end, at);
    if (at == std::string_view::npos) break;
  }
  return {};
}

}  // namespace

std::string kind_of_file(const std::string& path) {
  std::string text(longest_beginning, ' ');
  std::ifstream file(path, std::ios::binary);
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(file.gcount()));
  const std::string_view element = first_element(text);
  const std::string_view name = element.substr(0, element.find_first_of(" \t\r\n/>"));
  for (const std::string_view kind : {"job", "stock", "shop", "prices", "cutter", "printer"}) {
    if (name == kind) return std::string(kind);
  }
  return {};
}

}  // namespace mullion::cli
