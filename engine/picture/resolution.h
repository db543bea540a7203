#pragma once

// The size that a picture file gives itself: its pixels and how many of them go to an inch, from
// JFIF (ITU-T T.871, 10.1), else Exif 2.3 (tags 0x011A, 0x011B and 0x0128), or from pHYs of PNG
// (ISO/IEC 15948, 11.3.5.3).

#include <optional>
#include <string_view>

#include "engine/length/length.h"
#include "engine/picture/header.h"

namespace mullion {

// The length of one pixel, exact, as ticks over pixels; as the picture is stored.
struct PixelPitch {
  struct Ratio {
    std::int64_t ticks = 1, pixels = 1;
  };
  Ratio across, down;
};

// Nothing where the file states no resolution, states the shape of its pixels alone, or states one
// below 10 or above 20 000 pixels per inch.
std::optional<PixelPitch> pixel_pitch(std::string_view bytes);

PixelPitch pixels_per_inch(std::int64_t pixels);

struct PictureSize {
  Length width, height;
};

// As a viewer shows it, brought to the nearest multiple of `step`, and at least one.
PictureSize picture_size(const ImageHeader& header, const PixelPitch& pitch, Length step);

}  // namespace mullion
