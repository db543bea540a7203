#include <png.h>

#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <stdexcept>
//
#include <jpeglib.h>

#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

constexpr double inches_in_metre = 1 / 0.0254;

[[noreturn]] void give_up(png_structp, png_const_charp message) {
  throw std::runtime_error(std::string("the picture could not be written: ") + message);
}

void append_png(png_structp png, png_bytep data, png_size_t size) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<char*>(data), size);
}

struct PngWriter {
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, give_up, nullptr);
  png_infop info = png_create_info_struct(png);
  PngWriter() = default;
  PngWriter(const PngWriter&) = delete;
  PngWriter& operator=(const PngWriter&) = delete;
  ~PngWriter() { png_destroy_write_struct(&png, &info); }
};

void add_pixel(std::vector<unsigned char>& bytes, std::uint32_t word, bool opaque) {
  const std::uint32_t alpha = opaque ? 255 : word >> 24;
  for (const int shift : {16, 8, 0}) {
    const std::uint32_t part = word >> shift & 0xFF;
    const std::uint32_t plain = opaque ? part : (alpha == 0 ? 0 : (part * 255 + alpha / 2) / alpha);
    bytes.push_back(static_cast<unsigned char>(plain));
  }
  if (!opaque) bytes.push_back(static_cast<unsigned char>(alpha));
}

}  // namespace

std::string encode_png(const Pixels& pixels, double dots_per_inch) {
  std::string bytes;
  const auto width = static_cast<std::size_t>(pixels.size.width);
  PngWriter writer;
  png_set_write_fn(writer.png, &bytes, append_png, nullptr);
  png_set_IHDR(writer.png, writer.info, static_cast<png_uint_32>(width),
               static_cast<png_uint_32>(pixels.size.height), 8,
               pixels.opaque ? PNG_COLOR_TYPE_RGB : PNG_COLOR_TYPE_RGB_ALPHA, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (dots_per_inch > 0) {
    const auto density = static_cast<png_uint_32>(std::lround(dots_per_inch * inches_in_metre));
    png_set_pHYs(writer.png, writer.info, density, density, PNG_RESOLUTION_METER);
  }
  png_write_info(writer.png, writer.info);
  std::vector<unsigned char> row;
  for (std::size_t start = 0; start < pixels.argb.size(); start += width) {
    row.clear();
    for (std::size_t x = 0; x < width; ++x) add_pixel(row, pixels.argb[start + x], pixels.opaque);
    png_write_row(writer.png, row.data());
  }
  png_write_end(writer.png, writer.info);
  return bytes;
}

// The library's own error exit ends the program; with opaque pixels, sane sizes and memory as the
// target no error is left but want of memory.
std::string encode_jpeg(const Pixels& pixels, int quality) {
  jpeg_compress_struct info{};
  jpeg_error_mgr errors;
  info.err = jpeg_std_error(&errors);
  jpeg_create_compress(&info);
  unsigned char* out = nullptr;
  unsigned long size = 0;
  jpeg_mem_dest(&info, &out, &size);
  info.image_width = static_cast<JDIMENSION>(pixels.size.width);
  info.image_height = static_cast<JDIMENSION>(pixels.size.height);
  info.input_components = 3;
  info.in_color_space = JCS_RGB;
  jpeg_set_defaults(&info);
  jpeg_set_quality(&info, quality, TRUE);
  jpeg_start_compress(&info, TRUE);
  std::vector<JSAMPLE> row(std::size_t{info.image_width} * 3);
  while (info.next_scanline < info.image_height) {
    const std::uint32_t* from =
        pixels.argb.data() + std::size_t{info.next_scanline} * info.image_width;
    for (std::size_t x = 0; x < info.image_width; ++x) {
      row[3 * x] = static_cast<JSAMPLE>(from[x] >> 16 & 0xFF);
      row[3 * x + 1] = static_cast<JSAMPLE>(from[x] >> 8 & 0xFF);
      row[3 * x + 2] = static_cast<JSAMPLE>(from[x] & 0xFF);
    }
    JSAMPROW rows[] = {row.data()};
    jpeg_write_scanlines(&info, rows, 1);
  }
  jpeg_finish_compress(&info);
  std::string bytes(reinterpret_cast<const char*>(out), size);
  jpeg_destroy_compress(&info);
  std::free(out);
  return bytes;
}

}  // namespace mullion::picture
