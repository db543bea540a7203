#pragma once

// Numbers in the bytes of a file; a place past the end is zero.

#include <cstdint>
#include <string_view>

namespace mullion {

constexpr std::uint32_t byte_at(std::string_view bytes, std::size_t at) {
  return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0u;
}
constexpr std::uint32_t big_16(std::string_view bytes, std::size_t at) {
  return byte_at(bytes, at) << 8 | byte_at(bytes, at + 1);
}
constexpr std::uint32_t big_32(std::string_view bytes, std::size_t at) {
  return big_16(bytes, at) << 16 | big_16(bytes, at + 2);
}
constexpr std::uint32_t little_16(std::string_view bytes, std::size_t at) {
  return byte_at(bytes, at) | byte_at(bytes, at + 1) << 8;
}
constexpr std::uint32_t little_32(std::string_view bytes, std::size_t at) {
  return little_16(bytes, at) | little_16(bytes, at + 2) << 16;
}

}  // namespace mullion
