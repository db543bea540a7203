#include <algorithm>
#include <csetjmp>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <optional>
//
#include <jpeglib.h>
//
#include <jerror.h>  // numbers its messages by what jpeglib.h says

#include "render/colour/profile.h"
#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

constexpr long most_memory = 160L << 20;  // of the decoder

// libjpeg reports by these two calls. A warning means data that is not as it should be, such as a
// stream that ends early; a picture with damage is not shown to a customer.
struct Report {
  jpeg_error_mgr manager;
  std::jmp_buf back;
  char message[JMSG_LENGTH_MAX] = {};
};

void leave(j_common_ptr info) {
  auto* report = reinterpret_cast<Report*>(info->err);
  report->manager.format_message(info, report->message);
  std::longjmp(report->back, 1);
}

void note(j_common_ptr info, int level) {
  const bool of_profile = info->err->msg_code == JWRN_BOGUS_ICC;  // it is left aside
  if (level < 0 && !of_profile) leave(info);
}

// Everything that must be given back when a jump cuts the work short.
struct JpegDecoder {
  jpeg_decompress_struct info{};
  Report report;
  JOCTET* icc = nullptr;
  unsigned icc_size = 0;
  std::vector<std::uint8_t> row, rgb;
  std::optional<colour::ToSrgb> to_srgb;
  Pixels pixels;

  JpegDecoder() {
    info.err = jpeg_std_error(&report.manager);
    report.manager.error_exit = leave;
    report.manager.emit_message = note;
  }
  JpegDecoder(const JpegDecoder&) = delete;
  JpegDecoder& operator=(const JpegDecoder&) = delete;
  ~JpegDecoder() {
    jpeg_destroy_decompress(&info);
    std::free(icc);
  }

  void start(std::string_view bytes, PixelSize wanted);
  void read_rows();

 private:
  std::string_view profile() const {
    return {reinterpret_cast<const char*>(icc), icc == nullptr ? 0 : icc_size};
  }
  void choose_scale(PixelSize wanted);
  const std::uint8_t* row_in_srgb();
};

void JpegDecoder::choose_scale(PixelSize wanted) {
  for (unsigned eighths : {1u, 2u, 4u, 8u}) {
    info.scale_num = eighths;
    info.scale_denom = 8;
    jpeg_calc_output_dimensions(&info);
    if (static_cast<int>(info.output_width) >= wanted.width &&
        static_cast<int>(info.output_height) >= wanted.height) {
      return;
    }
  }
}

void JpegDecoder::start(std::string_view bytes, PixelSize wanted) {
  jpeg_create_decompress(&info);
  info.mem->max_memory_to_use = most_memory;
  jpeg_mem_src(&info, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  jpeg_save_markers(&info, JPEG_APP0 + 2, 0xFFFF);
  jpeg_read_header(&info, TRUE);
  jpeg_read_icc_profile(&info, &icc, &icc_size);
  const bool cmyk = info.num_components == 4, grey = info.num_components == 1;
  info.out_color_space = cmyk ? JCS_CMYK : grey ? JCS_GRAYSCALE : JCS_RGB;
  to_srgb.emplace(profile(), cmyk   ? colour::Channels::cmyk
                             : grey ? colour::Channels::grey
                                    : colour::Channels::rgb);
  choose_scale(wanted);
  jpeg_start_decompress(&info);
  pixels.size = {static_cast<int>(info.output_width), static_cast<int>(info.output_height)};
  pixels.argb.resize(std::size_t{info.output_width} * info.output_height);
  row.resize(std::size_t{info.output_width} * static_cast<std::size_t>(info.num_components));
  rgb.resize(std::size_t{info.output_width} * 3);
}

// Adobe's writers store CMYK inverted: 255 for no ink.
void invert(std::vector<std::uint8_t>& row) {
  for (std::uint8_t& value : row) value = static_cast<std::uint8_t>(255 - value);
}

void plain_rgb(const std::vector<std::uint8_t>& row, int components,
               std::vector<std::uint8_t>& rgb) {
  for (std::size_t i = 0; i < rgb.size() / 3; ++i) {
    for (std::size_t c = 0; c < 3; ++c) {
      const auto ink = [&](std::size_t n) { return 255 - row[4 * i + n]; };
      rgb[3 * i + c] =
          components == 1 ? row[i] : static_cast<std::uint8_t>((ink(c) * ink(3) + 127) / 255);
    }
  }
}

const std::uint8_t* JpegDecoder::row_in_srgb() {
  if (info.num_components == 4 && info.saw_Adobe_marker) invert(row);
  if (to_srgb->is_needed()) {
    to_srgb->convert(row.data(), rgb.data(), info.output_width);
    return rgb.data();
  }
  if (info.num_components == 3) return row.data();
  plain_rgb(row, info.num_components, rgb);
  return rgb.data();
}

void JpegDecoder::read_rows() {
  while (info.output_scanline < info.output_height) {
    std::uint32_t* out = pixels.argb.data() + std::size_t{info.output_scanline} * info.output_width;
    JSAMPROW rows[] = {row.data()};
    jpeg_read_scanlines(&info, rows, 1);
    const std::uint8_t* from = row_in_srgb();
    for (unsigned x = 0; x < info.output_width; ++x, from += 3) {
      out[x] = 0xFF000000u | static_cast<std::uint32_t>(from[0] << 16 | from[1] << 8 | from[2]);
    }
  }
  jpeg_finish_decompress(&info);
}

// The only frame that a jump returns to: it holds nothing that would need to be destroyed.
bool decode(JpegDecoder& decoder, std::string_view bytes, PixelSize wanted) {
  if (setjmp(decoder.report.back) != 0) return false;
  decoder.start(bytes, wanted);
  decoder.read_rows();
  return true;
}

}  // namespace

tl::expected<Pixels, std::string> decode_jpeg(std::string_view bytes, PixelSize wanted) {
  JpegDecoder decoder;
  if (decode(decoder, bytes, wanted)) return std::move(decoder.pixels);
  return tl::unexpected("the JPEG cannot be decoded: " + std::string(decoder.report.message));
}

}  // namespace mullion::picture
