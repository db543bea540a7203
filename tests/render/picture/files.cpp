#include "tests/render/picture/files.h"

#include <png.h>

#include <cstdio>
#include <cstdlib>
#include <vector>
//
#include <jpeglib.h>

namespace files {
namespace {

bool in_mark(int x, int y, int width, int height) {
  return x < width / 2 && y < height / 2;
}

// An APP1 segment with a big-endian TIFF directory of one entry (Exif 2.3, 4.5).
std::string exif_body(int orientation) {
  std::string out("Exif\0\0MM\0\x2A\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0", 25);
  out += static_cast<char>(orientation);
  out.append(6, '\0');
  return out;
}

void fill_pixel(JSAMPLE* pixel, Kind kind, bool mark) {
  switch (kind) {
    case Kind::grey:
      pixel[0] = mark ? 20 : 230;
      break;
    case Kind::rgb:
      pixel[0] = mark ? 200 : 230;
      pixel[1] = pixel[2] = mark ? 20 : 230;
      break;
    case Kind::cmyk:  // as Adobe's writers store it: 255 for no ink
      pixel[0] = 255;
      pixel[1] = pixel[2] = mark ? 20 : 255;
      pixel[3] = 255;
      break;
  }
}

// A JPEG written to memory. Between the two calls `info` can be given what else it shall have.
class JpegWriter {
 public:
  JpegWriter(int width, int height, Kind kind) {
    info.err = jpeg_std_error(&errors_);
    jpeg_create_compress(&info);
    jpeg_mem_dest(&info, &memory_, &size_);
    info.image_width = static_cast<JDIMENSION>(width);
    info.image_height = static_cast<JDIMENSION>(height);
    info.input_components = kind == Kind::grey ? 1 : kind == Kind::rgb ? 3 : 4;
    info.in_color_space = kind == Kind::grey  ? JCS_GRAYSCALE
                          : kind == Kind::rgb ? JCS_RGB
                                              : JCS_CMYK;
    jpeg_set_defaults(&info);
  }
  ~JpegWriter() {
    jpeg_destroy_compress(&info);
    std::free(memory_);
  }
  JpegWriter(const JpegWriter&) = delete;
  JpegWriter& operator=(const JpegWriter&) = delete;

  template <class FillRow>
  std::string write(const std::string& exif, FillRow fill_row) {
    jpeg_start_compress(&info, TRUE);
    if (!exif.empty()) {
      jpeg_write_marker(&info, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(exif.data()),
                        static_cast<unsigned>(exif.size()));
    }
    std::vector<JSAMPLE> row(std::size_t{info.image_width} *
                             static_cast<std::size_t>(info.input_components));
    while (info.next_scanline < info.image_height) {
      fill_row(row, static_cast<int>(info.next_scanline));
      JSAMPROW rows[] = {row.data()};
      jpeg_write_scanlines(&info, rows, 1);
    }
    jpeg_finish_compress(&info);
    return {reinterpret_cast<char*>(memory_), size_};
  }

  jpeg_compress_struct info{};

 private:
  jpeg_error_mgr errors_{};
  unsigned char* memory_ = nullptr;
  unsigned long size_ = 0;
};

void append(png_structp png, png_bytep data, std::size_t size) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<char*>(data), size);
}

void put_sample(std::vector<png_byte>& row, std::size_t index, int depth, unsigned value) {
  if (depth == 16) {
    row[2 * index] = row[2 * index + 1] = static_cast<png_byte>(value);
  } else if (depth == 8) {
    row[index] = static_cast<png_byte>(value);
  } else {
    const unsigned per_byte = 8u / static_cast<unsigned>(depth);
    const auto place = static_cast<unsigned>(index % per_byte);
    const unsigned shift = (per_byte - 1 - place) * static_cast<unsigned>(depth);
    row[index / per_byte] =
        static_cast<png_byte>(row[index / per_byte] | (value >> (8 - depth)) << shift);
  }
}

std::vector<png_byte> png_row(int y, int width, int height, int colour_type, int depth) {
  const int channels = colour_type == PNG_COLOR_TYPE_RGB          ? 3
                       : colour_type == PNG_COLOR_TYPE_RGB_ALPHA  ? 4
                       : colour_type == PNG_COLOR_TYPE_GRAY_ALPHA ? 2
                                                                  : 1;
  std::vector<png_byte> row(static_cast<std::size_t>(width * channels * depth + 7) / 8 + 1);
  for (int x = 0; x < width; ++x) {
    const bool mark = in_mark(x, y, width, height);
    for (int c = 0; c < channels; ++c) {
      const bool alpha = c == channels - 1 && (colour_type & PNG_COLOR_MASK_ALPHA) != 0;
      const bool red = c == 0 && (colour_type & PNG_COLOR_MASK_COLOR) != 0;
      unsigned value = alpha || !mark ? 255 : red ? 200 : 0;
      if (colour_type == PNG_COLOR_TYPE_PALETTE) value = mark ? 0 : 0xFF;
      put_sample(row, static_cast<std::size_t>(x * channels + c), depth, value);
    }
  }
  return row;
}

std::string big_32(std::uint32_t value) {
  std::string out;
  for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 0xFF);
  return out;
}

}  // namespace

std::string noisy_jpeg(int width, int height, unsigned restart_blocks) {
  JpegWriter writer(width, height, Kind::grey);
  writer.info.restart_interval = restart_blocks;
  std::uint32_t noise = 1;
  return writer.write({}, [&](std::vector<JSAMPLE>& row, int) {
    for (JSAMPLE& sample : row) {
      noise = noise * 1664525u + 1013904223u;
      sample = static_cast<JSAMPLE>(noise >> 24);
    }
  });
}

std::string jpeg(int width, int height, Kind kind, int orientation, bool progressive) {
  JpegWriter writer(width, height, kind);
  jpeg_set_quality(&writer.info, 90, TRUE);
  if (kind == Kind::cmyk) writer.info.write_Adobe_marker = TRUE;
  if (progressive) jpeg_simple_progression(&writer.info);
  const std::string exif = orientation == 0 ? std::string() : exif_body(orientation);
  return writer.write(exif, [&](std::vector<JSAMPLE>& row, int y) {
    for (int x = 0; x < width; ++x) {
      fill_pixel(&row[static_cast<std::size_t>(x * writer.info.input_components)], kind,
                 in_mark(x, y, width, height));
    }
  });
}

std::string png(int width, int height, int colour_type, int depth, bool interlaced) {
  std::string bytes;
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
  png_infop info = png_create_info_struct(png);
  png_set_write_fn(png, &bytes, append, nullptr);
  png_set_IHDR(png, info, static_cast<png_uint_32>(width), static_cast<png_uint_32>(height), depth,
               colour_type, interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (colour_type == PNG_COLOR_TYPE_PALETTE) {
    std::vector<png_color> colours(std::size_t{1} << depth, png_color{255, 255, 255});
    colours.front() = {200, 0, 0};
    png_set_PLTE(png, info, colours.data(), static_cast<int>(colours.size()));
  }
  png_write_info(png, info);
  std::vector<std::vector<png_byte>> rows;
  std::vector<png_bytep> starts;
  for (int y = 0; y < height; ++y) rows.push_back(png_row(y, width, height, colour_type, depth));
  for (auto& row : rows) starts.push_back(row.data());
  png_write_image(png, starts.data());
  png_write_end(png, nullptr);
  png_destroy_write_struct(&png, &info);
  return bytes;
}

std::string grey_png(int width, int height, unsigned char grey) {
  const std::vector<unsigned char> pixels(static_cast<std::size_t>(width * height), grey);
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(width);
  image.height = static_cast<png_uint_32>(height);
  image.format = PNG_FORMAT_GRAY;
  png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(image);
  std::string bytes(size, '\0');
  png_image_write_to_memory(&image, bytes.data(), &size, 0, pixels.data(), 0, nullptr);
  bytes.resize(size);
  return bytes;
}

std::string png_claiming(std::uint32_t width, std::uint32_t height) {
  std::string out = png(8, 8, PNG_COLOR_TYPE_RGB, 8);
  out.replace(16, 8, big_32(width) + big_32(height));
  return out;
}

}  // namespace files
