#pragma once

// The marker segments of a JPEG (ITU-T T.81, annex B), in the order of the file.

#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace mullion {

struct JpegSegment {
  int marker = 0;         // the byte after 0xFF
  std::size_t begin = 0;  // of the 0xFF
  std::size_t end = 0;    // just after the segment, entropy-coded data not counted
  std::string_view body;  // after the two bytes of length
};

// Up to and with the end-of-image marker. The error says where the file is broken.
tl::expected<std::vector<JpegSegment>, std::string> jpeg_segments(std::string_view bytes);

// Whether the coded data between the segments look damaged: bytes that stay the same for long, as a
// hole in a file leaves them, or restarts out of turn. A flat picture may look so too: only a
// decoder knows. Takes a small part of the time that decoding takes.
bool looks_damaged(std::string_view bytes, const std::vector<JpegSegment>& segments);

bool is_exif(const JpegSegment& segment);

// Written by Adobe's programs and by those that follow them, who store CMYK inverted: 255 is no
// ink (Adobe technical note 5116, APP14).
bool is_adobe(const JpegSegment& segment);

// The ICC profile that the segments carry, in as many as it takes (ICC.1, annex B.4); empty where
// there is none or a piece of it is missing.
std::string icc_profile(const std::vector<JpegSegment>& segments);

}  // namespace mullion
