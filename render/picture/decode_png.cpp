#include <png.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <csetjmp>
#include <cstring>
#include <numeric>
#include <optional>

#include "render/colour/profile.h"
#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

struct PngDecoder {
  std::string_view bytes;
  std::size_t at = 0;
  std::string message;
  std::jmp_buf back;
  png_structp png = nullptr;
  png_infop info = nullptr;
  std::vector<std::uint8_t> rows;
  std::vector<png_bytep> row_starts;
  std::optional<colour::ToSrgb> to_srgb;
  std::vector<std::uint8_t> grey_in_srgb;  // red, green, blue of each grey, where it has a profile
  Pixels strip, pixels;  // as many rows as are reduced to one, and the rows made of them

  PngDecoder() = default;
  PngDecoder(const PngDecoder&) = delete;
  PngDecoder& operator=(const PngDecoder&) = delete;
  ~PngDecoder() { png_destroy_read_struct(&png, &info, nullptr); }

  void start(const ImageHeader& header);
  void read_rows(PixelSize wanted);

 private:
  void read_profile();
  void take_row(std::uint8_t* rgba, std::uint32_t* out);
};

void fail(png_structp png, png_const_charp message) {
  auto* decoder = static_cast<PngDecoder*>(png_get_error_ptr(png));
  decoder->message = message;
  std::longjmp(decoder->back, 1);
}

void ignore(png_structp, png_const_charp) {}

void read_bytes(png_structp png, png_bytep to, std::size_t count) {
  auto* decoder = static_cast<PngDecoder*>(png_get_io_ptr(png));
  if (count > decoder->bytes.size() - decoder->at) png_error(png, "it ends too early");
  std::memcpy(to, decoder->bytes.data() + decoder->at, count);
  decoder->at += count;
}

// As the PNG specification ranks them (W3C, PNG, third edition, 4.3): iCCP, then sRGB, then gAMA
// and cHRM. The values that go with sRGB as its approximation (11.3.2.5) mean sRGB too.
std::string stated_by_numbers(png_structp png, png_infop info, colour::Channels channels) {
  constexpr double srgb_gamma = 0.45455, near = 0.0006;
  double gamma = 0;
  if (png_get_valid(png, info, PNG_INFO_sRGB) != 0) return {};
  if (png_get_gAMA(png, info, &gamma) == 0 || gamma < 0.1 || gamma > 10) return {};
  colour::Primaries stated;
  auto& [white, red, green, blue] = stated;
  const bool coloured = png_get_cHRM(png, info, &white.x, &white.y, &red.x, &red.y, &green.x,
                                     &green.y, &blue.x, &blue.y) != 0;
  const auto is = [](const colour::Chromaticity& c, double x, double y) {
    return std::abs(c.x - x) < near && std::abs(c.y - y) < near;
  };
  const bool usual = !coloured || (is(white, 0.3127, 0.3290) && is(red, 0.64, 0.33) &&
                                   is(green, 0.30, 0.60) && is(blue, 0.15, 0.06));
  if (usual && std::abs(gamma - srgb_gamma) < near) return {};
  return colour::simple_profile(1 / gamma, coloured ? std::optional(stated) : std::nullopt,
                                channels);
}

std::string profile_of(png_structp png, png_infop info, colour::Channels channels) {
  png_charp name = nullptr;
  png_bytep data = nullptr;
  png_uint_32 size = 0;
  int method = 0;
  if (png_get_iCCP(png, info, &name, &method, &data, &size) == 0) {
    return stated_by_numbers(png, info, channels);
  }
  return {reinterpret_cast<const char*>(data), size};
}

// libpng's rows of greys become red, green and blue before they come here: a profile of greys is
// applied by a table.
void PngDecoder::read_profile() {
  if ((png_get_color_type(png, info) & PNG_COLOR_MASK_COLOR) != 0) {
    to_srgb.emplace(profile_of(png, info, colour::Channels::rgba), colour::Channels::rgba);
    return;
  }
  to_srgb.emplace(std::string_view(), colour::Channels::rgba);
  const colour::ToSrgb from_grey(profile_of(png, info, colour::Channels::grey),
                                 colour::Channels::grey);
  if (!from_grey.is_needed()) return;
  std::array<std::uint8_t, 256> greys{};
  std::iota(greys.begin(), greys.end(), std::uint8_t{0});
  grey_in_srgb.resize(3 * greys.size());
  from_grey.convert(greys.data(), grey_in_srgb.data(), static_cast<std::uint32_t>(greys.size()));
}

// Whatever the colour type, rows come out as 8-bit red, green, blue, alpha.
void PngDecoder::start(const ImageHeader& header) {
  png = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, fail, ignore);
  info = png_create_info_struct(png);
  png_set_read_fn(png, this, read_bytes);
  png_read_info(png, info);
  read_profile();
  png_set_expand(png);
  png_set_scale_16(png);
  png_set_gray_to_rgb(png);
  png_set_add_alpha(png, 0xFF, PNG_FILLER_AFTER);
  png_set_interlace_handling(png);
  png_read_update_info(png, info);
  if (png_get_image_width(png, info) != static_cast<png_uint_32>(header.width) ||
      png_get_rowbytes(png, info) != static_cast<std::size_t>(header.width) * 4) {
    png_error(png, "its header is not understood");
  }
  strip.size.width = pixels.size.width = header.width;
  pixels.size.height = header.height;
}

void PngDecoder::take_row(std::uint8_t* rgba, std::uint32_t* out) {
  const int width = strip.size.width;
  if (to_srgb->is_needed()) to_srgb->convert(rgba, rgba, static_cast<std::uint32_t>(width));
  for (int x = 0; x < width; ++x, rgba += 4) {
    if (!grey_in_srgb.empty()) std::copy_n(&grey_in_srgb[3 * std::size_t{rgba[0]}], 3, rgba);
    const std::uint32_t alpha = rgba[3];
    const auto premultiplied = [&](int c) { return (rgba[c] * alpha + 127) / 255; };
    if (alpha != 255) pixels.opaque = false;
    out[x] = alpha << 24 | premultiplied(0) << 16 | premultiplied(1) << 8 | premultiplied(2);
  }
}

void PngDecoder::read_rows(PixelSize wanted) {
  const auto width = static_cast<std::size_t>(strip.size.width);
  const int height = pixels.size.height;
  const int factor = std::max(1, std::min(strip.size.width / std::max(1, wanted.width),
                                          height / std::max(1, wanted.height)));
  const bool interlaced = png_get_interlace_type(png, info) != PNG_INTERLACE_NONE;
  rows.resize(width * 4 * (interlaced ? static_cast<std::size_t>(height) : 1));
  if (interlaced) {
    for (int y = 0; y < height; ++y) {
      row_starts.push_back(rows.data() + static_cast<std::size_t>(y) * width * 4);
    }
    png_read_image(png, row_starts.data());
  }
  pixels.size = {(strip.size.width + factor - 1) / factor, (height + factor - 1) / factor};
  for (int y = 0; y < height; y += factor) {
    strip.size.height = std::min(factor, height - y);
    strip.argb.resize(width * static_cast<std::size_t>(strip.size.height));
    for (int v = 0; v < strip.size.height; ++v) {
      if (!interlaced) png_read_row(png, rows.data(), nullptr);
      take_row(interlaced ? row_starts[static_cast<std::size_t>(y) + v] : rows.data(),
               strip.argb.data() + static_cast<std::size_t>(v) * width);
    }
    const Pixels row = reduced(strip, factor);
    pixels.argb.insert(pixels.argb.end(), row.argb.begin(), row.argb.end());
  }
  png_read_end(png, nullptr);
}

// The only frame that a jump returns to: it holds nothing that would need to be destroyed.
bool decode(PngDecoder& decoder, const ImageHeader& header, PixelSize wanted) {
  if (setjmp(decoder.back) != 0) return false;
  decoder.start(header);
  decoder.read_rows(wanted);
  return true;
}

}  // namespace

tl::expected<Pixels, std::string> decode_png(std::string_view bytes, const ImageHeader& header,
                                             PixelSize wanted) {
  PngDecoder decoder;
  decoder.bytes = bytes;
  if (decode(decoder, header, wanted)) return std::move(decoder.pixels);
  return tl::unexpected("the PNG cannot be decoded: " + decoder.message);
}

}  // namespace mullion::picture
