#include "engine/picture/jpeg_segments.h"

#include <algorithm>
#include <cstring>
#include <map>

#include "engine/picture/bytes.h"

namespace mullion {
namespace {

constexpr int start_of_image = 0xD8, end_of_image = 0xD9, start_of_scan = 0xDA;
constexpr std::size_t most_segments = 4000;

bool stands_alone(int marker) {
  return marker == 0x01 || marker == start_of_image || marker == end_of_image;
}

// A byte of coded data or a restart: neither stands between segments.
bool belongs_to_scan(std::uint32_t marker) {
  return marker == 0 || (marker >= 0xD0 && marker <= 0xD7);
}

// Offset of the next marker that is not part of entropy-coded data.
std::size_t after_scan_data(std::string_view bytes, std::size_t at) {
  while (at + 1 < bytes.size()) {
    const void* found = std::memchr(bytes.data() + at, 0xFF, bytes.size() - at - 1);
    if (found == nullptr) return bytes.size();
    at = static_cast<std::size_t>(static_cast<const char*>(found) - bytes.data());
    const auto next = byte_at(bytes, at + 1);
    const bool data = belongs_to_scan(next);
    if (!data && next != 0xFF) return at;
    at += data ? 2 : 1;
  }
  return bytes.size();
}

// Whether some byte stands at least `hole` times in a row. Looks at a few places first.
bool has_hole(std::string_view data) {
  constexpr std::size_t hole = 256, step = hole / 4;
  for (std::size_t at = 0; at + hole <= data.size(); at += step) {
    const char byte = data[at];
    if (byte != data[at + step] || byte != data[at + 2 * step]) continue;
    const std::size_t begin = data.find_last_not_of(byte, at);
    const std::size_t end = data.find_first_not_of(byte, at);
    const std::size_t from = begin == std::string_view::npos ? 0 : begin + 1;
    if (std::min(end, data.size()) - from >= hole) return true;
  }
  return false;
}

// Restarts are numbered from 0 to 7 in turn (ITU-T T.81, B.2.1).
bool restarts_in_turn(std::string_view data) {
  int next = 0;
  for (std::size_t at = data.find('\xFF'); at != std::string_view::npos;
       at = data.find('\xFF', at + 1)) {
    const auto marker = byte_at(data, at + 1);
    if (marker < 0xD0 || marker > 0xD7) continue;
    if (marker != 0xD0 + static_cast<std::uint32_t>(next)) return false;
    next = (next + 1) % 8;
  }
  return true;
}

tl::unexpected<std::string> ends_early() {
  return tl::unexpected<std::string>("the JPEG ends before the picture does: it is truncated");
}

}  // namespace

tl::expected<std::vector<JpegSegment>, std::string> jpeg_segments(std::string_view bytes) {
  std::vector<JpegSegment> out;
  std::size_t at = 0;
  while (out.size() < most_segments) {
    while (byte_at(bytes, at) == 0xFF && byte_at(bytes, at + 1) == 0xFF) ++at;  // fill bytes
    if (at + 1 >= bytes.size()) return ends_early();
    if (byte_at(bytes, at) != 0xFF || belongs_to_scan(byte_at(bytes, at + 1))) {
      return tl::unexpected("the JPEG is damaged: no marker at byte " + std::to_string(at));
    }
    const int marker = static_cast<int>(byte_at(bytes, at + 1));
    JpegSegment segment{marker, at, at + 2, {}};
    if (!stands_alone(marker)) {
      const std::size_t length = big_16(bytes, at + 2);
      if (length < 2) {
        return tl::unexpected("the JPEG is damaged: no length at byte " + std::to_string(at + 2));
      }
      segment.end = at + 2 + length;
      if (segment.end > bytes.size()) return ends_early();
      segment.body = bytes.substr(at + 4, length - 2);
    }
    out.push_back(segment);
    if (marker == end_of_image) return out;
    if ((out.size() == 1) != (marker == start_of_image)) break;
    at = marker == start_of_scan ? after_scan_data(bytes, segment.end) : segment.end;
  }
  return tl::unexpected<std::string>(
      "the JPEG is damaged: it does not begin and end as one picture");
}

bool looks_damaged(std::string_view bytes, const std::vector<JpegSegment>& segments) {
  for (std::size_t i = 0; i + 1 < segments.size(); ++i) {
    if (segments[i].marker != start_of_scan) continue;
    const std::size_t begin = segments[i].end;
    const std::string_view data = bytes.substr(begin, segments[i + 1].begin - begin);
    if (has_hole(data) || !restarts_in_turn(data)) return true;
  }
  return false;
}

bool is_exif(const JpegSegment& segment) {
  constexpr std::string_view name("Exif\0\0", 6);
  return segment.marker == 0xE1 && segment.body.starts_with(name);
}

bool is_adobe(const JpegSegment& segment) {
  return segment.marker == 0xEE && segment.body.starts_with("Adobe");
}

std::string icc_profile(const std::vector<JpegSegment>& segments) {
  constexpr std::string_view name("ICC_PROFILE\0", 12);
  std::map<std::uint32_t, std::string_view> pieces;  // numbered from 1
  std::uint32_t count = 0;
  for (const JpegSegment& segment : segments) {
    if (segment.marker != 0xE2 || !segment.body.starts_with(name)) continue;
    const std::size_t numbers = name.size();
    count = byte_at(segment.body, numbers + 1);
    pieces.emplace(byte_at(segment.body, numbers),
                   segment.body.substr(std::min(numbers + 2, segment.body.size())));
  }
  std::string profile;
  if (pieces.size() != count || count == 0 || pieces.rbegin()->first != count) return profile;
  for (const auto& [number, piece] : pieces) profile += piece;
  return profile;
}

}  // namespace mullion
