// Bytes written by hand after the standards that engine/picture/resolution.h names.

#include "engine/picture/resolution.h"

#include <catch2/catch.hpp>

using namespace mullion;

namespace {

std::string bytes(std::initializer_list<int> values) {
  std::string out;
  for (int value : values) out += static_cast<char>(value);
  return out;
}

std::string png(const std::string& chunk) {
  return bytes({0x89, 'P', 'N', 'G', 13, 10, 26, 10}) + chunk +
         bytes({0, 0, 0, 0, 'I', 'E', 'N', 'D', 0, 0, 0, 0});
}

std::string physical(int unit) {  // 11811 pixels a metre: 300 an inch to the nearest
  return bytes(
      {0, 0, 0, 9, 'p', 'H', 'Y', 's', 0, 0, 0x2E, 0x23, 0, 0, 0x2E, 0x23, unit, 0, 0, 0, 0});
}

}  // namespace

TEST_CASE("3000 pixels at 11811 per metre are 10 in to the sixteenth") {
  const auto pitch = pixel_pitch(png(physical(1)));
  REQUIRE(pitch);
  ImageHeader header;
  header.width = 3000;
  header.height = 2400;
  CHECK(picture_size(header, *pitch, sixty_fourths(4)).width == inches(10));
  header.orientation = 6;  // shown on its side
  CHECK(picture_size(header, *pitch, sixty_fourths(4)).width == inches(8));
}

TEST_CASE("a PNG that states the shape of its pixels alone has no resolution") {
  CHECK(!pixel_pitch(png(physical(0))));
  CHECK(!pixel_pitch(png("")));
}
