#include "engine/sheets/inventory/journal.h"

#include <cstdint>
#include <sstream>

namespace mullion {
namespace {

constexpr std::string_view heading = "mullion stock journal 2";

// FNV-1a, 64 bits (constants from memory): enough to tell a torn file from a whole one.
std::uint64_t checksum(std::string_view bytes) {
  std::uint64_t sum = 0xcbf29ce484222325;
  for (const char c : bytes) {
    sum ^= static_cast<unsigned char>(c);
    sum *= 0x100000001b3;
  }
  return sum;
}

std::string sizes_text(std::uint64_t before, std::uint64_t after, std::uint64_t ledger) {
  return std::to_string(before) + ' ' + std::to_string(after) + ' ' + std::to_string(ledger);
}

}  // namespace

std::string format_journal(const Journal& journal) {
  const std::string body = journal.before + journal.after + journal.ledger_lines;
  const std::string sizes =
      sizes_text(journal.before.size(), journal.after.size(), journal.ledger_size);
  std::ostringstream text;
  text << heading << '\n' << sizes << ' ' << checksum(sizes + body) << '\n' << body;
  return text.str();
}

std::optional<Journal> parse_journal(std::string_view text) {
  const std::size_t first = text.find('\n');
  const std::size_t second = first == std::string_view::npos ? first : text.find('\n', first + 1);
  if (second == std::string_view::npos || text.substr(0, first) != heading) return std::nullopt;
  std::istringstream head(std::string(text.substr(first + 1, second - first - 1)));
  std::uint64_t before = 0, after = 0, ledger = 0, sum = 0;
  if (!(head >> before >> after >> ledger >> sum)) return std::nullopt;
  const std::string_view body = text.substr(second + 1);
  if (before > body.size() || after > body.size() - before) return std::nullopt;
  Journal journal{std::string(body.substr(0, before)), std::string(body.substr(before, after)),
                  ledger, std::string(body.substr(before + after))};
  return format_journal(journal) == text ? std::optional(std::move(journal)) : std::nullopt;
}

}  // namespace mullion
