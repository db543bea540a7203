#include "engine/picture/resolution.h"

#include <algorithm>

#include "engine/picture/bytes.h"
#include "engine/picture/jpeg_segments.h"

namespace mullion {
namespace {

using Ratio = PixelPitch::Ratio;
using Pitch = std::optional<PixelPitch>;

constexpr std::int64_t ticks_per_centimetre = 10 * ticks_per_mm;
constexpr std::int64_t ticks_per_metre = 1000 * ticks_per_mm;

// Keeps products with pixels within 64 bits.
constexpr std::int64_t largest_term = 1'000'000;

bool is_sensible(const Ratio& ratio) {
  constexpr std::int64_t least = 10, most = 20'000;  // pixels per inch
  return ratio.pixels * ticks_per_inch >= least * ratio.ticks &&
         ratio.pixels * ticks_per_inch <= most * ratio.ticks;
}

Pitch sensible(const PixelPitch& pitch) {
  if (is_sensible(pitch.across) && is_sensible(pitch.down)) return pitch;
  return std::nullopt;
}

Pitch jfif_pitch(std::string_view body) {
  const std::uint32_t unit = byte_at(body, 7);
  if (unit != 1 && unit != 2) return std::nullopt;
  const std::int64_t ticks = unit == 1 ? ticks_per_inch : ticks_per_centimetre;
  return sensible({{ticks, big_16(body, 8)}, {ticks, big_16(body, 10)}});
}

// The first directory of TIFF data, as far as resolution goes.
class TiffDirectory {
 public:
  explicit TiffDirectory(std::string_view tiff) : tiff_(tiff), little_(tiff.starts_with("II")) {}

  Pitch pitch() const {
    constexpr unsigned x_resolution = 0x011A, y_resolution = 0x011B, resolution_unit = 0x0128;
    constexpr unsigned inch = 2, centimetre = 3;
    const std::size_t across = value_of(x_resolution), down = value_of(y_resolution);
    if (across == 0 || down == 0) return std::nullopt;
    const std::size_t at = value_of(resolution_unit);
    const unsigned unit = at == 0 ? inch : u16(at);
    if (unit != inch && unit != centimetre) return std::nullopt;
    const std::int64_t ticks = unit == inch ? ticks_per_inch : ticks_per_centimetre;
    const auto x = ratio(u32(across), ticks), y = ratio(u32(down), ticks);
    return x && y ? sensible({*x, *y}) : std::nullopt;
  }

 private:
  std::uint32_t u16(std::size_t at) const {
    return little_ ? little_16(tiff_, at) : big_16(tiff_, at);
  }
  std::uint32_t u32(std::size_t at) const {
    return little_ ? little_32(tiff_, at) : big_32(tiff_, at);
  }

  // Where the value field of a tag is; 0 where the tag is not there.
  std::size_t value_of(unsigned tag) const {
    const std::size_t directory = u32(4);
    for (std::size_t i = 0; i < u16(directory); ++i) {
      const std::size_t entry = directory + 2 + 12 * i;
      if (entry + 12 > tiff_.size()) break;
      if (u16(entry) == tag) return entry + 8;
    }
    return 0;
  }

  std::optional<Ratio> ratio(std::size_t at, std::int64_t ticks) const {
    const std::int64_t pixels = u32(at), units = u32(at + 4);
    if (pixels < 1 || units < 1 || units > largest_term) return std::nullopt;
    return Ratio{ticks * units, pixels};
  }

  std::string_view tiff_;
  bool little_;
};

Pitch jpeg_pitch(std::string_view bytes) {
  constexpr std::string_view jfif("JFIF\0", 5);
  const auto segments = jpeg_segments(bytes);
  if (!segments) return std::nullopt;
  for (const JpegSegment& segment : *segments) {
    if (segment.marker != 0xE0 || !segment.body.starts_with(jfif)) continue;
    if (const Pitch pitch = jfif_pitch(segment.body)) return pitch;
  }
  for (const JpegSegment& segment : *segments) {
    if (is_exif(segment)) return TiffDirectory(segment.body.substr(6)).pitch();
  }
  return std::nullopt;
}

Pitch png_pitch(std::string_view bytes) {
  std::size_t at = 8;  // after the signature
  while (at + 12 <= bytes.size()) {
    const std::size_t length = big_32(bytes, at);
    const std::string_view type = bytes.substr(at + 4, 4);
    if (type == "IDAT" || type == "IEND") break;
    if (type == "pHYs" && length == 9) {
      if (byte_at(bytes, at + 16) != 1) return std::nullopt;
      return sensible(
          {{ticks_per_metre, big_32(bytes, at + 8)}, {ticks_per_metre, big_32(bytes, at + 12)}});
    }
    at += 12 + length;
  }
  return std::nullopt;
}

Length in_steps(std::int64_t pixels, const Ratio& ratio, Length step) {
  const std::int64_t ticks = pixels * ratio.ticks / ratio.pixels;
  return std::max(round_to_multiple(Length::from_ticks(ticks), step), step);
}

}  // namespace

std::optional<PixelPitch> pixel_pitch(std::string_view bytes) {
  return bytes.starts_with("\x89PNG") ? png_pitch(bytes) : jpeg_pitch(bytes);
}

PixelPitch pixels_per_inch(std::int64_t pixels) {
  return {{ticks_per_inch, pixels}, {ticks_per_inch, pixels}};
}

PictureSize picture_size(const ImageHeader& header, const PixelPitch& pitch, Length step) {
  const Length width = in_steps(header.width, pitch.across, step);
  const Length height = in_steps(header.height, pitch.down, step);
  return header.orientation >= 5 ? PictureSize{height, width} : PictureSize{width, height};
}

}  // namespace mullion
