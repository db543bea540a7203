#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <stdexcept>
//
#include <jpeglib.h>

#include "render/picture/pixels.h"

namespace mullion::picture {

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
