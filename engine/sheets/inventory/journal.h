#pragma once

// The journal of a commit: the whole stock file before and after, with a checksum over both, so
// that half a journal is never taken for a whole one.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace mullion {

struct Journal {
  std::string before, after;
};

inline constexpr std::size_t longest_journal_head = 200;  // bytes

std::string format_journal(const Journal& journal);
std::optional<Journal> parse_journal(std::string_view text);

}  // namespace mullion
