#include "render/picture/screen_copy.h"

#include <algorithm>
#include <cmath>

#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

constexpr int screen_quality = 85;

// Where pixel (x, y) of the upright picture is stored (Exif 2.3, table 6).
std::size_t stored_at(int orientation, PixelSize stored, int x, int y) {
  const int right = stored.width - 1, low = stored.height - 1;
  int column = x, row = y;
  if (orientation == 2) column = right - x;
  if (orientation == 3) column = right - x, row = low - y;
  if (orientation == 4) row = low - y;
  if (orientation == 5) column = y, row = x;
  if (orientation == 6) column = y, row = low - x;
  if (orientation == 7) column = right - y, row = low - x;
  if (orientation == 8) column = right - y, row = x;
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(stored.width) +
         static_cast<std::size_t>(column);
}

Pixels upright(Pixels stored, int orientation) {
  if (orientation == 1) return stored;
  Pixels out{stored.size, stored.opaque, {}};
  if (orientation >= 5) std::swap(out.size.width, out.size.height);
  out.argb.reserve(stored.argb.size());
  for (int y = 0; y < out.size.height; ++y) {
    for (int x = 0; x < out.size.width; ++x) {
      out.argb.push_back(stored.argb[stored_at(orientation, stored.size, x, y)]);
    }
  }
  return out;
}

int part_of(int side, double share) {
  return std::max(1, static_cast<int>(std::lround(side * share)));
}

}  // namespace

tl::expected<ScreenCopy, std::string> screen_copy(const Photograph& photograph, int longest) {
  const ImageHeader& header = photograph.header;
  const double share =
      std::min(1.0, static_cast<double>(longest) / std::max(header.width, header.height));
  const PixelSize wanted{part_of(header.width, share), part_of(header.height, share)};
  auto decoded = decode(photograph, wanted);
  if (!decoded) return tl::unexpected(std::move(decoded.error()));
  const Pixels pixels = upright(resampled(*decoded, wanted), header.orientation);
  if (!pixels.opaque) return ScreenCopy{encode_png(pixels), "image/png"};
  return ScreenCopy{encode_jpeg(pixels, screen_quality), "image/jpeg"};
}

}  // namespace mullion::picture
