#pragma once

// Picture files made for a test: gradients with a mark in one corner, and broken ones.

#include <cstdint>
#include <string>

namespace files {

enum class Kind { grey, rgb, cmyk };

// A JPEG of w x h pixels: upper left quarter red (or dark), the rest light; with an Exif
// orientation where it is not 0.
std::string jpeg(int width, int height, Kind kind = Kind::rgb, int orientation = 0,
                 bool progressive = false);

// A JPEG of noise, with a restart after so many blocks where that is not 0.
std::string noisy_jpeg(int width, int height, unsigned restart_blocks = 0);

// A PNG with that colour type and bit depth (PNG, table 8), interlaced or not; the same picture.
std::string png(int width, int height, int colour_type, int bit_depth, bool interlaced = false);

// A PNG of one grey.
std::string grey_png(int width, int height, unsigned char grey);

// A PNG header alone that claims a size, with a few bytes of data.
std::string png_claiming(std::uint32_t width, std::uint32_t height);

}  // namespace files
