#pragma once

// Whole files, read with a limit and replaced without ever damaging what stood there.

#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace mullion {

// The bytes of a regular file. Refuses folders, devices and files of more than `limit` bytes. The
// error is one sentence that names the path.
tl::expected<std::string, std::string> read_file(const std::string& path, std::size_t limit);

// Writes the bytes to a new file beside `path`, syncs it, and renames it over `path`. Whatever
// fails, an older file at `path` stays as it was and nothing is left beside it.
tl::expected<void, std::string> replace_file(const std::string& path, std::string_view bytes);

// Adds the bytes at the end of a file, which is made if need be, and syncs it. Whatever fails, the
// file holds what it held. Refuses a symbolic link.
tl::expected<void, std::string> append_to_file(const std::string& path, std::string_view bytes);

}  // namespace mullion
