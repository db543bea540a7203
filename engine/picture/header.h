#pragma once

// What a picture file says of itself before it is decoded: JPEG (ITU-T T.81, with the orientation
// of Exif 2.3, tag 0x0112) and PNG (ISO/IEC 15948; eXIf by its extensions 1.5).
//
// Sizes are pixels. Nothing is decoded, so a file of any claim costs no more than one pass over its
// bytes. Refused: other kinds of file, files that end before the picture does, codings that no PDF
// reader knows, and pictures beyond the limits below.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace mullion {

inline constexpr std::size_t largest_image_file = 96u << 20;  // bytes
// A PNG must be read whole, and held whole where it is interlaced.
inline constexpr std::int64_t most_jpeg_pixels = 200'000'000;
inline constexpr std::int64_t most_progressive_pixels = 60'000'000;
inline constexpr std::int64_t most_png_pixels = 60'000'000;
inline constexpr std::int64_t most_interlaced_pixels = 25'000'000;
inline constexpr int most_jpeg_scans = 64;  // of a progressive file; each costs a pass

enum class ImageKind { jpeg, png };

struct ImageHeader {
  ImageKind kind = ImageKind::jpeg;
  int width = 0, height = 0;  // as stored
  int orientation = 1;        // 1 to 8, as Exif numbers them
  int components = 3;         // JPEG: 1 grey, 3 colour, 4 CMYK
  bool interlaced = false;    // or progressive

  // As a viewer shows it.
  int shown_width() const { return orientation >= 5 ? height : width; }
  int shown_height() const { return orientation >= 5 ? width : height; }
  // Shown turned further by that many quarters clockwise.
  ImageHeader turned(int quarters) const;
};

// The error is one sentence, without the name of the file.
tl::expected<ImageHeader, std::string> read_image_header(std::string_view bytes);

// A JPEG without its Exif data, every other byte unchanged. For readers that would turn the
// picture by themselves, and because Exif often tells where a picture was taken.
std::string without_exif(std::string_view jpeg);

}  // namespace mullion
