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

// Start of image, one segment, end of image.
std::string jpeg(int marker, const std::string& body) {
  const int length = static_cast<int>(body.size()) + 2;
  return bytes({0xFF, 0xD8, 0xFF, marker, length / 256, length % 256}) + body + bytes({0xFF, 0xD9});
}

std::string jfif(int unit, int across, int down) {
  return jpeg(0xE0, bytes({'J', 'F', 'I', 'F', 0, 1, 2, unit, across / 256, across % 256,
                           down / 256, down % 256, 0, 0}));
}

// Numbers of TIFF data, which come in either order of bytes.
class Tiff {
 public:
  explicit Tiff(bool little) : little_(little) {
    text_ = little ? "II" : "MM";
    add(2, 42);
    add(4, 8);
  }
  Tiff& add(int size, unsigned value) {
    for (int i = 0; i < size; ++i) {
      const int shift = 8 * (little_ ? i : size - 1 - i);
      text_ += static_cast<char>(value >> shift & 0xFF);
    }
    return *this;
  }
  const std::string& text() const { return text_; }

 private:
  bool little_;
  std::string text_;
};

// Resolutions as rationals of `pixels` over `units` an inch (2) or a centimetre (3).
std::string exif(bool little, unsigned pixels, unsigned units, unsigned unit) {
  constexpr unsigned rational = 5, short_number = 3, after = 8 + 2 + 3 * 12 + 4;
  Tiff tiff(little);
  tiff.add(2, 3);
  tiff.add(2, 0x011A).add(2, rational).add(4, 1).add(4, after);
  tiff.add(2, 0x011B).add(2, rational).add(4, 1).add(4, after);
  tiff.add(2, 0x0128).add(2, short_number).add(4, 1).add(2, unit).add(2, 0);
  tiff.add(4, 0).add(4, pixels).add(4, units);
  return jpeg(0xE1, std::string("Exif\0\0", 6) + tiff.text());
}

Length width_of_1000(const std::string& file) {
  const auto pitch = pixel_pitch(file);
  REQUIRE(pitch);
  ImageHeader header;
  header.width = header.height = 1000;
  return picture_size(header, *pitch, sixty_fourths(1)).width;
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

TEST_CASE("1000 pixels at 250 dots an inch, or at 50 a centimetre, are 4 in and 20 cm by JFIF") {
  CHECK(width_of_1000(jfif(1, 250, 250)) == inches(4));
  CHECK(width_of_1000(jfif(2, 50, 50)) == round_to_multiple(millimetres(200), sixty_fourths(1)));
}

TEST_CASE("a JFIF file that states the shape of its pixels alone has no resolution") {
  CHECK(!pixel_pitch(jfif(0, 1, 1)));
}

TEST_CASE("1000 pixels at 2500 for 10 inches, or 500 for 10 cm, by Exif in either order of bytes") {
  for (const bool little : {true, false}) {
    CHECK(width_of_1000(exif(little, 2500, 10, 2)) == inches(4));
    CHECK(width_of_1000(exif(little, 500, 10, 3)) ==
          round_to_multiple(millimetres(200), sixty_fourths(1)));
  }
}

TEST_CASE("resolutions that no scanner has are not believed") {
  CHECK(!pixel_pitch(jfif(1, 9, 9)));
  CHECK(!pixel_pitch(jfif(1, 20'001, 20'001)));
  CHECK(!pixel_pitch(exif(true, 0, 1, 2)));
  CHECK(!pixel_pitch(exif(true, 300, 0, 2)));
  CHECK(!pixel_pitch(exif(true, 300, 1, 1)));
}
