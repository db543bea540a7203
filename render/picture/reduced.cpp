#include <algorithm>

#include "render/picture/pixels.h"

namespace mullion::picture {

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
