#pragma once

// Whether files have changed: what the file system says of each of them.

#include <cstdint>
#include <string>
#include <vector>

namespace mullion::cli::watch {

// A file that is not there, or is being replaced, has a stamp of zeros.
struct Stamp {
  std::uint64_t inode = 0;
  std::int64_t size = 0, seconds = 0, nanoseconds = 0;

  friend bool operator==(const Stamp&, const Stamp&) = default;
};

using Stamps = std::vector<Stamp>;

Stamps stamps_of(const std::vector<std::string>& files);

// The job file, and the images and outlines that it names as far as it can be read.
std::vector<std::string> files_of(const std::string& job_file);

}  // namespace mullion::cli::watch
