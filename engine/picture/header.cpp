#include "engine/picture/header.h"

#include <algorithm>
#include <array>

#include "engine/picture/bytes.h"
#include "engine/picture/jpeg_segments.h"

namespace mullion {
namespace {

constexpr std::string_view png_signature("\x89PNG\r\n\x1a\n", 8);
constexpr std::string_view jpeg_signature("\xFF\xD8\xFF", 3);

using Header = tl::expected<ImageHeader, std::string>;

Header within_limits(const ImageHeader& header, std::int64_t most) {
  if (header.width == 0 || header.height == 0) {
    return tl::unexpected<std::string>("the picture has no size");
  }
  const std::int64_t pixels = std::int64_t{header.width} * header.height;
  if (pixels <= most) return header;
  return tl::unexpected("the picture is " + std::to_string(header.width) + " x " +
                        std::to_string(header.height) + " pixels; the limit is " +
                        std::to_string(most / 1'000'000) + " megapixels");
}

// The value of the orientation tag in the first directory of TIFF data; 1 where there is none.
int tiff_orientation(std::string_view tiff) {
  constexpr unsigned orientation_tag = 0x0112;
  const bool little = tiff.starts_with("II");
  const auto u16 = [&](std::size_t at) { return little ? little_16(tiff, at) : big_16(tiff, at); };
  const std::size_t directory = little ? little_32(tiff, 4) : big_32(tiff, 4);
  for (std::size_t i = 0; i < u16(directory); ++i) {
    const std::size_t entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.size()) break;
    if (u16(entry) != orientation_tag) continue;
    const auto value = static_cast<int>(u16(entry + 8));
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

bool is_frame(int marker) {
  return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

tl::expected<void, std::string> read_frame(const JpegSegment& frame, ImageHeader& header) {
  const auto precision = byte_at(frame.body, 0);
  if (frame.marker > 0xC2 || precision != 8) {
    return tl::unexpected<std::string>(
        "the JPEG is of a rare kind (lossless, arithmetic or of more than 8 bits); save it as a "
        "usual one");
  }
  header.height = static_cast<int>(big_16(frame.body, 1));
  header.width = static_cast<int>(big_16(frame.body, 3));
  header.components = static_cast<int>(byte_at(frame.body, 5));
  header.interlaced = frame.marker == 0xC2;
  if (header.components == 1 || header.components == 3 || header.components == 4) return {};
  return tl::unexpected("the JPEG has " + std::to_string(header.components) +
                        " colour components; expected 1, 3 or 4");
}

// Each block of 8 x 8 takes a code of at least one bit for its mean and, but for progressive files,
// one more for the rest of it (ITU-T T.81, F.1.2 and G.1.2).
bool could_hold(std::size_t coded_bytes, const ImageHeader& header) {
  const std::size_t across = (static_cast<std::size_t>(header.width) + 7) / 8;
  const std::size_t down = (static_cast<std::size_t>(header.height) + 7) / 8;
  return coded_bytes * 8 >= across * down * (header.interlaced ? 1 : 2);
}

Header read_jpeg(std::string_view bytes) {
  const auto segments = jpeg_segments(bytes);
  if (!segments) return tl::unexpected(segments.error());
  ImageHeader header;
  int scans = 0;
  std::size_t coded = bytes.size();
  bool framed = false, oriented = false;
  for (const JpegSegment& segment : *segments) {
    coded -= segment.end - segment.begin;
    if (segment.marker == 0xDA) ++scans;
    if (is_exif(segment) && !oriented) {
      header.orientation = tiff_orientation(segment.body.substr(6));
      oriented = true;
    }
    if (!is_frame(segment.marker)) continue;
    if (framed) return tl::unexpected<std::string>("the JPEG holds more than one picture");
    framed = true;
    if (const auto read = read_frame(segment, header); !read) return tl::unexpected(read.error());
  }
  if (!framed || scans == 0) return tl::unexpected<std::string>("the JPEG holds no picture");
  if (scans > most_jpeg_scans) {
    return tl::unexpected("the JPEG has " + std::to_string(scans) + " scans; the limit is " +
                          std::to_string(most_jpeg_scans));
  }
  const Header limited =
      within_limits(header, header.interlaced ? most_progressive_pixels : most_jpeg_pixels);
  if (limited && !could_hold(coded, header)) {
    return tl::unexpected("the JPEG is damaged: " + std::to_string(coded) +
                          " bytes of it cannot hold the " + std::to_string(header.width) + " x " +
                          std::to_string(header.height) + " pixels that it claims");
  }
  return limited;
}

// The chunks up to IEND, which tell whether the file is whole and, by eXIf, how it is turned; their
// checks are the decoder's.
bool read_png_chunks(std::string_view bytes, ImageHeader& header) {
  std::size_t at = png_signature.size();
  while (at + 12 <= bytes.size()) {
    const std::size_t length = big_32(bytes, at);
    const std::string_view type = bytes.substr(at + 4, 4);
    if (type == "IEND") return true;
    if (type == "eXIf") header.orientation = tiff_orientation(bytes.substr(at + 8, length));
    at += 12 + length;
  }
  return false;
}

Header read_png(std::string_view bytes) {
  constexpr std::size_t ihdr = 8;
  if (bytes.size() < ihdr + 25 || bytes.substr(ihdr + 4, 4) != "IHDR") {
    return tl::unexpected<std::string>("the PNG is damaged: it has no header");
  }
  const std::uint32_t width = big_32(bytes, ihdr + 8), height = big_32(bytes, ihdr + 12);
  constexpr std::uint32_t longest = 1'000'000;
  ImageHeader header;
  header.kind = ImageKind::png;
  header.width = static_cast<int>(std::min(width, longest));
  header.height = static_cast<int>(std::min(height, longest));
  header.interlaced = byte_at(bytes, ihdr + 20) != 0;
  const bool whole = read_png_chunks(bytes, header);
  const Header limited =
      within_limits(header, header.interlaced ? most_interlaced_pixels : most_png_pixels);
  if (limited && !whole) {
    return tl::unexpected<std::string>("the PNG ends before the picture does: it is truncated");
  }
  return limited;
}

}  // namespace

ImageHeader ImageHeader::turned(int quarters) const {
  // Of each orientation the one that shows the same pixels turned by a quarter clockwise.
  constexpr std::array<int, 9> turned_right{0, 6, 7, 8, 5, 2, 3, 4, 1};
  ImageHeader out = *this;
  for (int i = 0; i < quarters; ++i) {
    out.orientation = turned_right[static_cast<std::size_t>(out.orientation)];
  }
  return out;
}

Header read_image_header(std::string_view bytes) {
  if (bytes.starts_with(png_signature)) return read_png(bytes);
  if (bytes.starts_with(jpeg_signature)) return read_jpeg(bytes);
  return tl::unexpected<std::string>("found a file of another kind; expected a JPEG or a PNG");
}

std::string without_exif(std::string_view jpeg) {
  std::string out;
  std::size_t kept = 0;
  if (const auto segments = jpeg_segments(jpeg)) {
    for (const JpegSegment& segment : *segments) {
      if (!is_exif(segment)) continue;
      out += jpeg.substr(kept, segment.begin - kept);
      kept = segment.end;
    }
  }
  out += jpeg.substr(kept);
  return out;
}

}  // namespace mullion
