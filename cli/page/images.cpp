#include "cli/page/images.h"

#include <algorithm>

namespace mullion::cli::page {
namespace {

constexpr std::size_t most_headers = 2000;
constexpr std::size_t most_kept_bytes = std::size_t{24} * 1024 * 1024;

}  // namespace

std::optional<ImageHeader> Images::header(const std::string& name) {
  const Stamp stamp = files_.stamp(name);
  {
    const std::lock_guard lock(mutex_);
    for (const KnownHeader& known : headers_) {
      if (known.name == name && known.stamp == stamp) return known.header;
    }
  }
  KnownHeader read{name, stamp, std::nullopt};
  if (const auto bytes = files_.read(name, largest_image_file)) {
    if (const auto header = read_image_header(*bytes)) read.header = *header;
  }
  const std::lock_guard lock(mutex_);
  std::erase_if(headers_, [&](const KnownHeader& known) { return known.name == name; });
  if (headers_.size() >= most_headers) headers_.pop_front();
  headers_.push_back(read);
  return read.header;
}

tl::expected<picture::ScreenCopy, std::string> Images::copy(const std::string& name, int longest) {
  const Stamp stamp = files_.stamp(name);
  {
    const std::lock_guard lock(mutex_);
    const auto kept = std::find_if(copies_.begin(), copies_.end(), [&](const KeptCopy& one) {
      return one.name == name && one.stamp == stamp && one.longest == longest;
    });
    if (kept != copies_.end()) {
      std::rotate(kept, kept + 1, copies_.end());
      return copies_.back().copy;
    }
  }
  auto bytes = files_.read(name, largest_image_file);
  if (!bytes) return tl::unexpected(name + ": cannot be read");
  const auto header = read_image_header(*bytes);
  if (!header) return tl::unexpected(name + ": " + header.error());
  const picture::Photograph photograph{*header,
                                       std::make_shared<const std::string>(std::move(*bytes))};
  auto copy = picture::screen_copy(photograph, longest);
  if (!copy) return tl::unexpected(name + ": " + copy.error());
  const std::lock_guard lock(mutex_);
  kept_bytes_ += copy->bytes.size();
  copies_.push_back({name, stamp, longest, *copy});
  while (kept_bytes_ > most_kept_bytes && !copies_.empty()) {
    kept_bytes_ -= copies_.front().copy.bytes.size();
    copies_.pop_front();
  }
  return copy;
}

}  // namespace mullion::cli::page
