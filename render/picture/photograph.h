#pragma once

// A customer's picture file, and its drawing into a box of a page.
//
// A JPEG goes into a PDF byte for byte, and into an SVG without its Exif data; its orientation is
// applied by the drawing. On a PNG page, and where a resolution is asked for, it is decoded to what
// the box needs. PNG files are always decoded. Colours are brought to sRGB by the file's own ICC
// profile whenever it is decoded.

#include <memory>
#include <string>
#include <tl/expected.hpp>

#include "engine/picture/header.h"
#include "render/paper/canvas.h"
#include "render/paper/document.h"

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

// Fills the box with the picture, cropped. The error is one sentence, without the file's name.
tl::expected<void, std::string> draw(paper::Canvas& canvas, paper::Format format,
                                     const Photograph& photograph, const paper::Box& box,
                                     const Crop& crop, const Resolution& resolution);

}  // namespace mullion::picture
