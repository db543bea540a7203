#pragma once

// Decoded pictures in sRGB (IEC 61966-2-1), and their encoding as JPEG.
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

// The mean of blocks of `factor` by `factor` pixels.
Pixels reduced(const Pixels& pixels, int factor);

}  // namespace mullion::picture
