#include <algorithm>
#include <array>
#include <cmath>

#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

using Sums = std::array<double, 4>;  // of the bytes of words

// The mean of what lies from `from` to `to` along a row or column.
template <class Word>
Sums mean_between(double from, double to, const Word& word) {
  Sums sums{};
  for (auto i = static_cast<std::size_t>(from); static_cast<double>(i) < to; ++i) {
    const double at = static_cast<double>(i);
    const double part = std::min(to, at + 1) - std::max(from, at);
    const Sums one = word(i);
    for (std::size_t c = 0; c < 4; ++c) sums[c] += part * one[c];
  }
  for (double& sum : sums) sum /= to - from;
  return sums;
}

Sums bytes_of(std::uint32_t word) {
  Sums out{};
  for (std::size_t c = 0; c < 4; ++c) out[c] = word >> (8 * c) & 0xFF;
  return out;
}

std::uint32_t word_of(const Sums& bytes) {
  std::uint32_t word = 0;
  for (std::size_t c = 0; c < 4; ++c) {
    word |= static_cast<std::uint32_t>(std::lround(bytes[c])) << (8 * c);
  }
  return word;
}

}  // namespace

Pixels resampled(const Pixels& pixels, PixelSize wanted) {
  if (wanted.width >= pixels.size.width || wanted.height >= pixels.size.height) return pixels;
  const auto from_width = static_cast<std::size_t>(pixels.size.width);
  const auto width = static_cast<std::size_t>(wanted.width);
  const auto height = static_cast<std::size_t>(wanted.height);
  const double across = static_cast<double>(from_width) / static_cast<double>(width);
  const double down = static_cast<double>(pixels.size.height) / static_cast<double>(height);
  Pixels out{wanted, pixels.opaque, {}};
  out.argb.reserve(width * height);
  std::vector<Sums> row(from_width);
  for (std::size_t y = 0; y < height; ++y) {
    const double top = down * static_cast<double>(y);
    const double bottom = std::min(top + down, static_cast<double>(pixels.size.height));
    for (std::size_t x = 0; x < from_width; ++x) {
      row[x] = mean_between(
          top, bottom, [&](std::size_t i) { return bytes_of(pixels.argb[i * from_width + x]); });
    }
    for (std::size_t x = 0; x < width; ++x) {
      const double left = across * static_cast<double>(x);
      const double right = std::min(left + across, static_cast<double>(from_width));
      out.argb.push_back(word_of(mean_between(left, right, [&](std::size_t i) { return row[i]; })));
    }
  }
  return out;
}

Pixels reduced(const Pixels& pixels, int factor) {
  if (factor <= 1) return pixels;
  Pixels out;
  out.opaque = pixels.opaque;
  out.size = {(pixels.size.width + factor - 1) / factor,
              (pixels.size.height + factor - 1) / factor};
  out.argb.reserve(static_cast<std::size_t>(out.size.width) *
                   static_cast<std::size_t>(out.size.height));
  for (int y = 0; y < out.size.height; ++y) {
    for (int x = 0; x < out.size.width; ++x) {
      std::uint32_t sums[4] = {}, count = 0;
      for (int v = y * factor; v < std::min((y + 1) * factor, pixels.size.height); ++v) {
        const std::uint32_t* row =
            pixels.argb.data() +
            static_cast<std::size_t>(v) * static_cast<std::size_t>(pixels.size.width);
        for (int u = x * factor; u < std::min((x + 1) * factor, pixels.size.width); ++u, ++count) {
          for (int c = 0; c < 4; ++c) sums[c] += row[u] >> (8 * c) & 0xFF;
        }
      }
      std::uint32_t mean = 0;
      for (int c = 0; c < 4; ++c) mean |= (sums[c] + count / 2) / count << (8 * c);
      out.argb.push_back(mean);
    }
  }
  return out;
}

}  // namespace mullion::picture
