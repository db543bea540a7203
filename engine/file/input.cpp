#include "engine/file/input.h"

#include "engine/file/file.h"

namespace mullion {

Result<std::string> read_input(const std::string& path, std::size_t limit) {
  auto bytes = read_file(path, limit);
  if (bytes) return std::move(*bytes);
  return tl::unexpected(Problems{{Severity::error, "file-read", bytes.error(), {}, {}}});
}

}  // namespace mullion
