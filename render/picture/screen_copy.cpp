#include "render/picture/screen_copy.h"

#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

constexpr int screen_quality = 85;

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

// Where pixel (x, y) of the upright picture is stored (Exif 2.3, table 6).
std::size_t stored_at(int orientation, PixelSize stored, int x, int y) {
  const int right = stored.width - 1, low = stored.height - 1;
  int column = x, row = y;
  if (orientation == 2) column = right - x;
  if (orientation == 3) column = right - x, row = low - y;
  if (orientation == 4) row = low - y;
  if (orientation == 5) column = y, row = x;
  if (orientation == 6) column = y, row = low - x;
  if (orientation == 7) column = right - y, row = low - x;
  if (orientation == 8) column = right - y, row = x;
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(stored.width) +
         static_cast<std::size_t>(column);
}

Pixels upright(Pixels stored, int orientation) {
  if (orientation == 1) return stored;
  Pixels out{stored.size, stored.opaque, {}};
  if (orientation >= 5) std::swap(out.size.width, out.size.height);
  out.argb.reserve(stored.argb.size());
  for (int y = 0; y < out.size.height; ++y) {
    for (int x = 0; x < out.size.width; ++x) {
      out.argb.push_back(stored.argb[stored_at(orientation, stored.size, x, y)]);
    }
  }
  return out;
}

Surface surface_over(Pixels& pixels) {
  return {cairo_image_surface_create_for_data(reinterpret_cast<unsigned char*>(pixels.argb.data()),
                                              CAIRO_FORMAT_ARGB32, pixels.size.width,
                                              pixels.size.height, 4 * pixels.size.width),
          cairo_surface_destroy};
}

Pixels resampled(Pixels pixels, PixelSize wanted) {
  if (wanted.width >= pixels.size.width) return pixels;
  Pixels out{wanted, pixels.opaque, {}};
  out.argb.resize(static_cast<std::size_t>(wanted.width) * static_cast<std::size_t>(wanted.height));
  const Surface from = surface_over(pixels), to = surface_over(out);
  cairo_t* context = cairo_create(to.get());
  cairo_scale(context, static_cast<double>(wanted.width) / pixels.size.width,
              static_cast<double>(wanted.height) / pixels.size.height);
  cairo_set_source_surface(context, from.get(), 0, 0);
  cairo_pattern_set_filter(cairo_get_source(context), CAIRO_FILTER_GOOD);
  cairo_pattern_set_extend(cairo_get_source(context), CAIRO_EXTEND_PAD);
  cairo_paint(context);
  cairo_destroy(context);
  cairo_surface_flush(to.get());
  return out;
}

std::string png_of(Pixels& pixels) {
  std::string out;
  const Surface surface = surface_over(pixels);
  cairo_surface_write_to_png_stream(
      surface.get(),
      [](void* to, const unsigned char* data, unsigned size) {
        static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), size);
        return CAIRO_STATUS_SUCCESS;
      },
      &out);
  return out;
}

int part_of(int side, double share) {
  return std::max(1, static_cast<int>(std::lround(side * share)));
}

}  // namespace

tl::expected<ScreenCopy, std::string> screen_copy(const Photograph& photograph, int longest) {
  const ImageHeader& header = photograph.header;
  const double share =
      std::min(1.0, static_cast<double>(longest) / std::max(header.width, header.height));
  const PixelSize wanted{part_of(header.width, share), part_of(header.height, share)};
  auto decoded = header.kind == ImageKind::jpeg ? decode_jpeg(*photograph.bytes, wanted)
                                                : decode_png(*photograph.bytes, header, wanted);
  if (!decoded) return tl::unexpected(std::move(decoded.error()));
  const int factor = std::max(
      1, std::min(decoded->size.width / wanted.width, decoded->size.height / wanted.height));
  if (factor > 1) *decoded = reduced(*decoded, factor);
  Pixels pixels = upright(resampled(std::move(*decoded), wanted), header.orientation);
  if (!pixels.opaque) return ScreenCopy{png_of(pixels), "image/png"};
  return ScreenCopy{encode_jpeg(pixels, screen_quality), "image/jpeg"};
}

}  // namespace mullion::picture
