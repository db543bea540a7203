#include "render/paper/png_file.h"

#include <cairo.h>
#include <png.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <stdexcept>
#include <vector>

namespace mullion::paper {
namespace {

constexpr double inches_in_metre = 1 / 0.0254;

[[noreturn]] void give_up(png_structp, png_const_charp message) {
  throw std::runtime_error(std::string("the picture could not be written: ") + message);
}

void append(png_structp png, png_bytep data, png_size_t size) {
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

// From 32-bit words of which the low three bytes are red, green and blue.
void to_rgb(const unsigned char* row, std::vector<unsigned char>& rgb) {
  for (std::size_t x = 0; x < rgb.size() / 3; ++x) {
    std::uint32_t word = 0;
    std::memcpy(&word, row + x * 4, 4);
    rgb[x * 3] = static_cast<unsigned char>(word >> 16);
    rgb[x * 3 + 1] = static_cast<unsigned char>(word >> 8);
    rgb[x * 3 + 2] = static_cast<unsigned char>(word);
  }
}

}  // namespace

std::string png_file(cairo_surface_t* surface, double dpi) {
  cairo_surface_flush(surface);
  const auto width = static_cast<png_uint_32>(cairo_image_surface_get_width(surface));
  const auto height = static_cast<png_uint_32>(cairo_image_surface_get_height(surface));
  const auto density = static_cast<png_uint_32>(std::lround(dpi * inches_in_metre));
  std::string bytes;
  PngWriter writer;
  png_set_write_fn(writer.png, &bytes, append, nullptr);
  png_set_IHDR(writer.png, writer.info, width, height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_pHYs(writer.png, writer.info, density, density, PNG_RESOLUTION_METER);
  png_write_info(writer.png, writer.info);
  std::vector<unsigned char> rgb(static_cast<std::size_t>(width) * 3);
  for (png_uint_32 y = 0; y < height; ++y) {
    to_rgb(cairo_image_surface_get_data(surface) +
               static_cast<std::size_t>(y) * cairo_image_surface_get_stride(surface),
           rgb);
    png_write_row(writer.png, rgb.data());
  }
  png_write_end(writer.png, writer.info);
  return bytes;
}

}  // namespace mullion::paper
