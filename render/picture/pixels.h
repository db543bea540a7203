#pragma once

// Decoded pictures in sRGB (IEC 61966-2-1), and their encoding as JPEG or PNG.
//
// A decoder may return fewer pixels than the file holds, but no fewer than `wanted` along each side
// unless the file has fewer. Orientation is not applied.

#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "engine/picture/header.h"

namespace mullion::picture {

struct PixelSize {
  int width = 0, height = 0;
};

struct Pixels {
  PixelSize size;
  bool opaque = true;
  std::vector<std::uint32_t> argb;  // rows of alpha, red, green, blue from the high byte;
                                    // premultiplied, as Cairo keeps them
};

tl::expected<Pixels, std::string> decode_jpeg(std::string_view bytes, PixelSize wanted);
tl::expected<Pixels, std::string> decode_png(std::string_view bytes, const ImageHeader& header,
                                             PixelSize wanted);

std::string encode_jpeg(const Pixels& pixels, int quality);
// With an alpha channel unless the pixels are opaque. Dots per inch, where they are known, are kept
// as whole dots per metre in a pHYs chunk (ISO/IEC 15948, 11.3.5.3). Throws std::runtime_error
// where libpng gives up.
std::string encode_png(const Pixels& pixels, double dots_per_inch = 0);

// The mean of blocks of `factor` by `factor` pixels.
Pixels reduced(const Pixels& pixels, int factor);
// Of that size: the mean of what lies under each new pixel. As it is where it is no larger.
Pixels resampled(const Pixels& pixels, PixelSize wanted);

}  // namespace mullion::picture
