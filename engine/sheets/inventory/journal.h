#pragma once

// The journal of a commit: the whole stock file before and after, and what is added to the ledger
// at which place, with a checksum over all of it, so that half a journal is never taken for a whole
// one.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mullion {

struct Journal {
  std::string before, after;
  std::uint64_t ledger_size = 0;  // bytes before
  std::string ledger_lines;       // that are added
};

inline constexpr std::size_t longest_journal_head = 200;  // bytes

std::string format_journal(const Journal& journal);
std::optional<Journal> parse_journal(std::string_view text);

}  // namespace mullion
