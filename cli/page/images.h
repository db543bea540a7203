#pragma once

// The pictures of jobs, scaled down to what a screen needs and kept until their files change. For
// several threads.

#include <deque>
#include <mutex>
#include <optional>
#include <string>

#include "cli/page/files.h"
#include "engine/picture/header.h"
#include "render/picture/screen_copy.h"

namespace mullion::cli::page {

class Images {
 public:
  explicit Images(const Files& files) : files_(files) {}

  // What the file says of itself; nothing where it is no picture that may be read.
  std::optional<ImageHeader> header(const std::string& name);

  // The error is one sentence.
  tl::expected<picture::ScreenCopy, std::string> copy(const std::string& name, int longest);

 private:
  struct KnownHeader {
    std::string name;
    Stamp stamp;
    std::optional<ImageHeader> header;
  };
  struct KeptCopy {
    std::string name;
    Stamp stamp;
    int longest = 0;
    picture::ScreenCopy copy;
  };

  const Files& files_;
  std::mutex mutex_;
  std::deque<KnownHeader> headers_;
  std::deque<KeptCopy> copies_;  // lately asked for last
  std::size_t kept_bytes_ = 0;
};

}  // namespace mullion::cli::page
