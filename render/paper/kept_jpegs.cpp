#include "render/paper/kept_jpegs.h"

#include <algorithm>

namespace mullion::paper {
namespace {

void add_16(std::string& bytes, std::size_t value) {
  bytes += static_cast<char>(value >> 8 & 0xFF);
  bytes += static_cast<char>(value & 0xFF);
}

// Start of image, frame of 8 bits, comment (ITU-T T.81, annex B).
std::string frame_alone(int width, int height, int components, const std::string& comment) {
  std::string bytes("\xFF\xD8\xFF\xC0", 4);
  const std::size_t count = static_cast<std::size_t>(components);
  add_16(bytes, 8 + 3 * count);
  bytes += '\x08';
  add_16(bytes, static_cast<std::size_t>(height));
  add_16(bytes, static_cast<std::size_t>(width));
  bytes += static_cast<char>(components);
  for (std::size_t i = 1; i <= count; ++i) bytes.append({static_cast<char>(i), '\x11', '\0'});
  bytes.append("\xFF\xFE", 2);
  add_16(bytes, 2 + comment.size());
  return bytes + comment;
}

}  // namespace

std::string KeptJpegs::stand_in(const Data& jpeg, int width, int height, int components) {
  const auto known =
      std::find_if(kept_.begin(), kept_.end(), [&](const Data& data) { return *data == *jpeg; });
  const std::size_t number = static_cast<std::size_t>(known - kept_.begin());
  if (known == kept_.end()) kept_.push_back(jpeg);
  const std::string bytes =
      frame_alone(width, height, components, "picture " + std::to_string(number));
  numbers_.emplace(bytes, number);
  return bytes;
}

KeptJpegs::Data KeptJpegs::data_of(std::string_view stand_in) const {
  const auto found = numbers_.find(stand_in);
  return found == numbers_.end() ? nullptr : kept_[found->second];
}

std::size_t KeptJpegs::bytes() const {
  std::size_t sum = 0;
  for (const Data& data : kept_) sum += data->size();
  return sum;
}

}  // namespace mullion::paper
