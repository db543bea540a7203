#pragma once

// A customer's picture file, and how it is to be shown.
//
// JPEG data may be passed on as they are; PNG files are always decoded. Colours are brought to sRGB
// by the file's own ICC profile whenever it is decoded.

#include <memory>
#include <string>
#include <tl/expected.hpp>

#include "engine/picture/header.h"
#include "render/picture/pixels.h"

namespace mullion::picture {

struct Crop {
  double zoom = 1;              // 1: as large as the box needs
  double pan_x = 0, pan_y = 0;  // -1 to 1: left to right, top to bottom of what is cut off
};

struct Resolution {
  double dots_per_inch = 300;  // of what is decoded
  bool keep_jpeg = true;       // pass JPEG data on unchanged where the page can hold it
};

struct Photograph {
  ImageHeader header;  // with an orientation other than the file's where it hangs turned
  std::shared_ptr<const std::string> bytes;
};

// A JPEG is decoded once to see that it is whole: always up to 4 MB, else where its data look
// damaged (jpeg_segments.h). The error is one sentence that names the file.
tl::expected<Photograph, std::string> open_photograph(const std::string& path);

// What keeps the file from being decoded, by decoding it; empty where nothing does.
std::string fault_of(const Photograph& photograph);

// As stored: at least as many pixels as are wanted along each side, if the file has so many, and
// fewer than twice as many along one. The error is one sentence, without the file's name.
tl::expected<Pixels, std::string> decode(const Photograph& photograph, PixelSize wanted);

}  // namespace mullion::picture
