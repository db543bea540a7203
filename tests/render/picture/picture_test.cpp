#include <png.h>

#include <catch2/catch.hpp>

#include "engine/picture/header.h"
#include "render/picture/photograph.h"
#include "render/picture/pixels.h"
#include "tests/oracle/program.h"
#include "tests/render/picture/files.h"
#include "tests/render/picture/pages.h"

namespace {

using namespace mullion;
using files::Kind;
using pages::drawn;
using pages::Page;
using pages::page_of;
using pages::Tone;

Tone tone(const picture::Pixels& pixels, double across, double down) {
  const auto x = static_cast<std::size_t>(across * pixels.size.width);
  const auto y = static_cast<std::size_t>(down * pixels.size.height);
  const std::uint32_t argb = pixels.argb[y * static_cast<std::size_t>(pixels.size.width) + x];
  return {static_cast<int>(argb >> 16 & 255), static_cast<int>(argb >> 8 & 255),
          static_cast<int>(argb & 255)};
}

picture::Pixels decoded(const std::string& bytes, picture::PixelSize wanted = {9999, 9999}) {
  const auto header = read_image_header(bytes);
  REQUIRE(header.has_value());
  const auto pixels = header->kind == ImageKind::jpeg ? picture::decode_jpeg(bytes, wanted)
                                                      : picture::decode_png(bytes, *header, wanted);
  INFO((pixels ? "" : pixels.error()));
  REQUIRE(pixels.has_value());
  return *pixels;
}

bool is_red(const Tone& tone) {
  return tone.red > 150 && tone.green < 90 && tone.blue < 90;
}
bool is_light(const Tone& tone) {
  return tone.red > 200 && tone.green > 200 && tone.blue > 200;
}

TEST_CASE("a header tells size and orientation without decoding") {
  const auto turned = read_image_header(files::jpeg(40, 24, Kind::rgb, 6)).value();
  CHECK(turned.width == 40);
  CHECK(turned.shown_width() == 24);
  CHECK(turned.shown_height() == 40);
  CHECK(turned.orientation == 6);
  const auto grey = read_image_header(files::jpeg(7, 5, Kind::grey, 0, true)).value();
  CHECK(grey.components == 1);
  CHECK(grey.interlaced);
  CHECK(read_image_header(files::png(9, 3, PNG_COLOR_TYPE_RGB, 16, true)).value().interlaced);
}

TEST_CASE("every JPEG colour space shows its colours") {
  for (const Kind kind : {Kind::rgb, Kind::cmyk}) {
    const auto pixels = decoded(files::jpeg(64, 48, kind));
    CHECK(is_red(tone(pixels, 0.2, 0.2)));
    CHECK(is_light(tone(pixels, 0.8, 0.8)));
  }
  const auto grey = decoded(files::jpeg(64, 48, Kind::grey));
  CHECK(tone(grey, 0.2, 0.2).red < 60);
  CHECK(is_light(tone(grey, 0.8, 0.8)));
}

TEST_CASE("every PNG colour type and depth shows its colours") {
  struct Type {
    int colour, depth;
    bool coloured;
  };
  const Type types[] = {{PNG_COLOR_TYPE_GRAY, 1, false},      {PNG_COLOR_TYPE_GRAY, 4, false},
                        {PNG_COLOR_TYPE_GRAY, 16, false},     {PNG_COLOR_TYPE_GRAY_ALPHA, 8, false},
                        {PNG_COLOR_TYPE_RGB, 8, true},        {PNG_COLOR_TYPE_RGB, 16, true},
                        {PNG_COLOR_TYPE_RGB_ALPHA, 16, true}, {PNG_COLOR_TYPE_PALETTE, 2, true},
                        {PNG_COLOR_TYPE_PALETTE, 8, true}};
  for (const Type& type : types) {
    for (const bool interlaced : {false, true}) {
      INFO("colour type " << type.colour << ", depth " << type.depth);
      const auto pixels = decoded(files::png(40, 30, type.colour, type.depth, interlaced));
      const Tone mark = tone(pixels, 0.2, 0.2);
      CHECK((type.coloured ? is_red(mark) : mark.red < 60));
      CHECK(is_light(tone(pixels, 0.8, 0.8)));
    }
  }
}

TEST_CASE("a decoder gives no fewer pixels than are wanted, and not many more") {
  const auto jpeg = decoded(files::jpeg(1600, 1200), {300, 200});
  CHECK(jpeg.size.width >= 300);
  CHECK(jpeg.size.width <= 700);
  const auto png = decoded(files::png(1600, 1200, PNG_COLOR_TYPE_RGB, 8), {300, 200});
  CHECK(png.size.width >= 300);
  CHECK(png.size.width <= 600);
  CHECK(is_red(tone(png, 0.2, 0.2)));
}

TEST_CASE("each orientation of Exif is shown upright in PDF, SVG and PNG") {
  // Where the upper left quarter as stored comes to lie: Exif 2.3, 4.6.5 A, tag 274.
  const std::pair<double, double> where[] = {{0.2, 0.2}, {0.8, 0.2}, {0.8, 0.8}, {0.2, 0.8},
                                             {0.2, 0.2}, {0.8, 0.2}, {0.8, 0.8}, {0.2, 0.8}};
  for (int orientation = 1; orientation <= 8; ++orientation) {
    const auto [x, y] = where[orientation - 1];
    const std::string bytes = files::jpeg(64, 64, Kind::rgb, orientation);
    for (const auto format : {paper::Format::pdf, paper::Format::svg, paper::Format::png}) {
      INFO("orientation " << orientation << ", format " << static_cast<int>(format));
      const Page page = page_of(bytes, format);
      CHECK(is_red(page.at(x, y)));
      CHECK(is_light(page.at(1 - x, y)));
      CHECK(is_light(page.at(x, 1 - y)));
    }
  }
}

TEST_CASE("a JPEG lies in the PDF byte for byte") {
  const std::string bytes = files::jpeg(320, 200, Kind::rgb, 8);
  const std::string folder = oracle::scratch_folder("extract");
  oracle::write_file(folder + "/p.pdf", drawn(bytes, paper::Format::pdf));
  REQUIRE(oracle::run({"pdfimages", "-all", folder + "/p.pdf", folder + "/image"}).status == 0);
  CHECK(oracle::read_file(folder + "/image-000.jpg") == bytes);
}

TEST_CASE("a CMYK JPEG keeps its colours in a PDF") {
  const Page page = page_of(files::jpeg(64, 64, Kind::cmyk), paper::Format::pdf);
  CHECK(is_red(page.at(0.2, 0.2)));
  CHECK(is_light(page.at(0.8, 0.8)));
}

TEST_CASE("sampling down makes a smaller file of the same look") {
  const std::string bytes = files::jpeg(2400, 2400);
  const std::string small = drawn(bytes, paper::Format::pdf, {}, {150, false});
  CHECK(small.size() < drawn(bytes, paper::Format::pdf).size() / 3);
}

TEST_CASE("zoom and pan choose the part that is shown") {
  const std::string bytes = files::jpeg(64, 64);
  const std::string folder = oracle::scratch_folder("crop");
  oracle::write_file(folder + "/a.png", drawn(bytes, paper::Format::png, {2, -1, -1}));
  oracle::write_file(folder + "/b.png", drawn(bytes, paper::Format::png, {2, 1, 1}));
  const Page a = pages::read_png(folder + "/a.png"), b = pages::read_png(folder + "/b.png");
  CHECK(is_red(a.at(0.5, 0.5)));
  CHECK(is_red(a.at(0.9, 0.9)));
  CHECK(is_light(b.at(0.1, 0.1)));
}

TEST_CASE("a JPEG without its Exif is the same picture") {
  const std::string with = files::jpeg(64, 48, Kind::rgb, 3), plain = files::jpeg(64, 48);
  CHECK(without_exif(with) == plain);
  CHECK(without_exif(plain) == plain);
}

TEST_CASE("truncated files are refused at every length") {
  for (const std::string& bytes :
       {files::jpeg(64, 48, Kind::rgb, 6), files::jpeg(64, 48, Kind::rgb, 0, true),
        files::png(32, 24, PNG_COLOR_TYPE_RGB, 8)}) {
    for (std::size_t length = 0; length < bytes.size(); length += 7) {
      INFO(length);
      CHECK_FALSE(read_image_header(std::string_view(bytes).substr(0, length)).has_value());
    }
  }
}

TEST_CASE("no damage to a file crashes or hangs the reader") {
  for (const std::string& bytes :
       {files::jpeg(48, 48, Kind::rgb, 6, true), files::png(32, 24, PNG_COLOR_TYPE_PALETTE, 4)}) {
    std::uint32_t state = 12345;
    for (int round = 0; round < 400; ++round) {
      std::string damaged = bytes;
      for (int i = 0; i < 3; ++i) {
        state = state * 1664525u + 1013904223u;
        damaged[state % damaged.size()] = static_cast<char>(state >> 24);
      }
      const auto header = read_image_header(damaged);
      if (!header) continue;
      if (header->kind == ImageKind::jpeg) {
        (void)picture::decode_jpeg(damaged, {16, 16});
      } else {
        (void)picture::decode_png(damaged, *header, {16, 16});
      }
    }
  }
}

}  // namespace
