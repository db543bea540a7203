#include "cli/page/http.h"

#include <cctype>

namespace mullion::cli::page {
namespace {

const std::string nothing;

const std::string& found_in(const std::map<std::string, std::string, std::less<>>& map,
                            std::string_view name) {
  const auto found = map.find(name);
  return found == map.end() ? nothing : found->second;
}

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

bool decode(std::string_view raw, std::string& out) {
  for (std::size_t i = 0; i < raw.size(); ++i) {
    char c = raw[i];
    if (c == '%') {
      if (i + 2 >= raw.size()) return false;
      const int high = hex_digit(raw[i + 1]), low = hex_digit(raw[i + 2]);
      if (high < 0 || low < 0) return false;
      c = static_cast<char>(high * 16 + low);
      i += 2;
    }
    if (c == '\0') return false;
    out += c;
  }
  return true;
}

}  // namespace

const std::string& Request::header(std::string_view name) const {
  return found_in(headers, name);
}

const std::string& Request::asked(std::string_view name) const {
  return found_in(query, name);
}

bool decode_path(std::string_view raw, std::vector<std::string>& parts) {
  if (!raw.starts_with('/')) return false;
  raw.remove_prefix(1);
  while (!raw.empty()) {
    const std::size_t slash = raw.find('/');
    std::string part;
    if (!decode(raw.substr(0, slash), part)) return false;
    parts.push_back(std::move(part));
    if (slash == raw.npos) break;
    raw.remove_prefix(slash + 1);
  }
  return true;
}

std::string percent_encoded(std::string_view text) {
  constexpr char digits[] = "0123456789ABCDEF";
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain =
        byte < 0x80 && (std::isalnum(byte) != 0 || c == '-' || c == '_' || c == '.' || c == '~');
    if (plain) {
      out += c;
    } else {
      out += '%';
      out += digits[byte / 16];
      out += digits[byte % 16];
    }
  }
  return out;
}

}  // namespace mullion::cli::page
