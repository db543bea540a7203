#pragma once

// What every fuzz target begins with: libFuzzer calls `LLVMFuzzerTestOneInput` with bytes of its
// own making, and takes a trap, a sanitizer's report, a long run or much memory for a find.

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace mullion::fuzz {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

// A property of every input: unlike `assert`, it holds in a Release build too.
inline void must(bool property) {
  if (!property) __builtin_trap();
}

}  // namespace mullion::fuzz
