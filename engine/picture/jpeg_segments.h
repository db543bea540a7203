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

bool is_exif(const JpegSegment& segment);

}  // namespace mullion
