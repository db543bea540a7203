// Colours that a file's own ICC profile gives a meaning to. The profiles are such that the colours
// to be seen are known without a colour machine, or known from Little CMS.

#include <png.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "engine/picture/jpeg_segments.h"
#include "tests/oracle/program.h"
#include "tests/render/picture/files.h"
#include "tests/render/picture/pages.h"
#include "tests/render/picture/profiles.h"

namespace {

using namespace mullion;
using files::Kind;
using pages::Tone;
using paper::Format;

// The mark of files::jpeg is (200, 20, 20); by the swapped profile that is a green of sRGB.
bool is_green(const Tone& tone) {
  return std::abs(tone.red - 20) < 12 && std::abs(tone.green - 200) < 12 &&
         std::abs(tone.blue - 20) < 12;
}
bool is_red(const Tone& tone) {
  return tone.red > 150 && tone.green < 90 && tone.blue < 90;
}

std::string only_image(const std::string& pdf) {
  const std::string folder = oracle::scratch_folder("only-image");
  oracle::write_file(folder + "/p.pdf", pdf);
  REQUIRE(oracle::run({"pdfimages", "-all", folder + "/p.pdf", folder + "/image"}).status == 0);
  return oracle::read_file(folder + "/image-000.jpg");
}

// MuPDF as Debian builds it leaves profiles aside.
std::vector<pages::Rendering> colour_managed(const std::string& pdf) {
  auto found = pages::renderings(pdf);
  std::erase_if(found, [](const pages::Rendering& rendering) { return rendering.by == "mupdf"; });
  return found;
}

TEST_CASE("a JPEG's profile is that of its image in the PDF, and its bytes are unchanged") {
  const std::string bytes =
      profiles::in_jpeg(files::jpeg(64, 64), profiles::red_and_green_swapped());
  const std::string pdf = pages::drawn(bytes, Format::pdf);
  CHECK(only_image(pdf) == bytes);
  for (const auto& [by, page] : colour_managed(pdf)) {
    INFO(by);
    CHECK(is_green(page.at(0.2, 0.2)));
  }
}

TEST_CASE("colours that are decoded go by the profile too") {
  const std::string bytes =
      profiles::in_jpeg(files::jpeg(64, 64), profiles::red_and_green_swapped());
  CHECK(is_green(pages::page_of(bytes, Format::png).at(0.2, 0.2)));
  const std::string png = profiles::in_png(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8),
                                           profiles::red_and_green_swapped());
  for (const Format format : {Format::pdf, Format::svg, Format::png}) {
    const Tone mark = pages::page_of(png, format).at(0.2, 0.2);
    CHECK(mark.green > 150);
    CHECK(mark.red < 60);
  }
}

TEST_CASE("a profile in many pieces is put together, and one that lacks a piece is not used") {
  const std::string profile = profiles::red_and_green_swapped();
  const std::string bytes = profiles::in_jpeg(files::jpeg(64, 64), profile, 100);
  CHECK(icc_profile(jpeg_segments(bytes).value()) == profile);
  std::string torn = bytes;
  torn.erase(2, 2 + 2 + 12 + 2 + 100);
  CHECK(icc_profile(jpeg_segments(torn).value()).empty());
  CHECK(is_red(pages::page_of(torn, Format::pdf).at(0.2, 0.2)));
}

TEST_CASE("a profile for other channels is not used") {
  const std::string bytes = profiles::in_jpeg(files::jpeg(64, 64), profiles::linear_grey());
  for (const Format format : {Format::pdf, Format::png}) {
    CHECK(is_red(pages::page_of(bytes, format).at(0.2, 0.2)));
  }
}

TEST_CASE("greys go by their profile in JPEG and PNG") {
  // 20 of 255 of the light, by the curve of sRGB (IEC 61966-2-1): 1.055 x^(1/2.4) - 0.055.
  const double seen = 255 * (1.055 * std::pow(20 / 255.0, 1 / 2.4) - 0.055);
  const std::string jpeg =
      profiles::in_jpeg(files::jpeg(64, 64, Kind::grey), profiles::linear_grey());
  for (const auto& [by, page] : colour_managed(pages::drawn(jpeg, Format::pdf))) {
    INFO(by);
    CHECK(page.at(0.2, 0.2).green == Approx(seen).margin(6));
  }
  CHECK(pages::page_of(jpeg, Format::png).at(0.2, 0.2).green == Approx(seen).margin(6));
  // A PNG of grey 170 = 2/3 (bit pattern 10 of two bits).
  const double lighter = 255 * (1.055 * std::pow(170 / 255.0, 1 / 2.4) - 0.055);
  const std::string png = profiles::in_png(files::grey_png(16, 16, 170), profiles::linear_grey());
  for (const Format format : {Format::pdf, Format::svg, Format::png}) {
    CHECK(pages::page_of(png, format).at(0.5, 0.5).blue == Approx(lighter).margin(3));
  }
}

std::string big_32s(const std::vector<unsigned>& values) {
  std::string out;
  for (const unsigned value : values) {
    for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 0xFF);
  }
  return out;
}

// PNG, third edition (W3C), 11.3.2.2: sample = light ^ gamma, and the chunk holds 100000 times
// gamma.
TEST_CASE("a PNG's gAMA says how much light its samples mean") {
  const auto seen_of = [](double light) {  // the curve of sRGB (IEC 61966-2-1)
    return 255 * (1.055 * std::pow(light, 1 / 2.4) - 0.055);
  };
  const auto grey_at = [](unsigned gamma, unsigned char grey) {
    std::string png = files::grey_png(16, 16, grey);
    png.erase(png.find("sRGB") - 4, 13);  // libpng states it: length, name, one byte, sum
    png = profiles::with_chunk(png, "gAMA", big_32s({gamma}));
    return pages::page_of(png, Format::png).at(0.5, 0.5).green;
  };
  CHECK(grey_at(100'000, 170) == Approx(seen_of(170 / 255.0)).margin(2));
  CHECK(grey_at(55'556, 85) == Approx(seen_of(std::pow(85 / 255.0, 1.8))).margin(2));
  CHECK(grey_at(45'455, 170) == 170);  // what goes with sRGB
  const std::string coloured =
      profiles::with_chunk(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8), "gAMA", big_32s({100'000}));
  CHECK(pages::page_of(coloured, Format::png).at(0.2, 0.2).red ==
        Approx(seen_of(200 / 255.0)).margin(2));
}

// PNG, third edition, 11.3.2.1: white, red, green, blue, each x and y times 100000.
TEST_CASE("a PNG's cHRM says which red, green and blue its samples mean") {
  const std::string swapped =
      big_32s({31'270, 32'900, 30'000, 60'000, 64'000, 33'000, 15'000, 6'000});
  const std::string usual =
      big_32s({31'270, 32'900, 64'000, 33'000, 30'000, 60'000, 15'000, 6'000});
  const auto mark_of = [](const std::string& chromaticities, const std::string& before) {
    std::string png =
        profiles::with_chunk(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8), "cHRM", chromaticities);
    png = profiles::with_chunk(png, "gAMA", big_32s({45'455}));
    if (!before.empty()) png = profiles::with_chunk(png, "sRGB", before);
    return pages::page_of(png, Format::png).at(0.2, 0.2);
  };
  const Tone mark = mark_of(swapped, "");
  CHECK(mark.green > 190);
  CHECK(mark.red < 20);
  CHECK(mark_of(usual, "").red == 200);
  CHECK(mark_of(swapped, std::string(1, '\0')).red == 200);  // sRGB comes first (4.3)
}

TEST_CASE("a PNG whose primaries are no triangle keeps its colours") {
  const std::string png = profiles::with_chunk(
      profiles::with_chunk(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8), "cHRM",
                           big_32s({31'270, 32'900, 30'000, 30'000, 30'000, 30'000, 0, 0})),
      "gAMA", big_32s({100'000}));
  CHECK(pages::page_of(png, Format::png).at(0.2, 0.2).red >= 200);
}

TEST_CASE("a CMYK JPEG lies in the PDF byte for byte and shows its colours") {
  const std::string bytes = files::jpeg(64, 64, Kind::cmyk);
  const std::string pdf = pages::drawn(bytes, Format::pdf);
  CHECK(only_image(pdf) == bytes);
  for (const auto& [by, page] : pages::renderings(pdf)) {
    INFO(by);
    CHECK(is_red(page.at(0.2, 0.2)));
    CHECK(page.at(0.8, 0.8).green > 240);
  }
}

TEST_CASE("a CMYK JPEG with a profile has the colours that Little CMS gives it") {
  // A press profile that comes with Ghostscript.
  const std::string profile =
      oracle::read_file("/usr/share/color/icc/ghostscript/default_cmyk.icc");
  const std::string bytes = profiles::in_jpeg(files::jpeg(64, 64, Kind::cmyk), profile);
  const auto [red, green, blue] = profiles::srgb_of(profile, {0, 235, 235, 0});
  const auto check = [&, r = red, g = green, b = blue](const Tone& mark) {
    CHECK(mark.red == Approx(r).margin(12));
    CHECK(mark.green == Approx(g).margin(12));
    CHECK(mark.blue == Approx(b).margin(12));
  };
  const std::string pdf = pages::drawn(bytes, Format::pdf);
  CHECK(only_image(pdf) == bytes);
  for (const auto& [by, page] : colour_managed(pdf)) {
    INFO(by);
    check(page.at(0.2, 0.2));
  }
  check(pages::page_of(bytes, Format::png).at(0.2, 0.2));
  check(pages::page_of(bytes, Format::svg).at(0.2, 0.2));
}

TEST_CASE("a PNG says by eXIf how it is turned") {
  // Orientation 6: the stored upper left corner is shown at the upper right (Exif 2.3, tag 274).
  const std::string exif("MM\0\x2A\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0", 26);
  const std::string png =
      profiles::with_chunk(files::png(64, 64, PNG_COLOR_TYPE_RGB, 8), "eXIf", exif);
  for (const Format format : {Format::pdf, Format::svg, Format::png}) {
    const auto page = pages::page_of(png, format);
    CHECK(is_red(page.at(0.8, 0.2)));
    CHECK_FALSE(is_red(page.at(0.2, 0.2)));
  }
}

}  // namespace
