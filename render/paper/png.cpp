#include <cmath>
#include <cstdio>
#include <stdexcept>

#include "render/paper/cairo.h"
#include "render/paper/document.h"

namespace mullion::paper {
namespace {

constexpr double largest_png_side = 30'000;
constexpr double largest_png_area = 200e6;  // pixels

bool fits(double width, double height) {
  return width <= largest_png_side && height <= largest_png_side &&
         width * height <= largest_png_area;
}

std::string too_large(const PageSize& size, double dpi) {
  const auto dots = [&](Length side, double at) { return std::ceil(points(side) * at / 72); };
  double most = std::floor(dpi);
  while (most > 1 && !fits(dots(size.width, most), dots(size.height, most))) --most;
  char text[200];
  std::snprintf(text, sizeof text,
                "a PNG of %.0f x %.0f dots would be too large: at most %.0f dots a side and %.0f "
                "million in all; ask for at most %.0f dots per inch",
                dots(size.width, dpi), dots(size.height, dpi), largest_png_side,
                largest_png_area / 1e6, most);
  return text;
}

}  // namespace

std::string write_png(const Drawing& drawing, const PageSize& size, double dpi) {
  const double width = std::ceil(points(size.width) * dpi / 72);
  const double height = std::ceil(points(size.height) * dpi / 72);
  if (!fits(width, height)) throw std::runtime_error(too_large(size, dpi));
  picture::Pixels pixels;
  pixels.size = {static_cast<int>(width), static_cast<int>(height)};
  pixels.argb.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  const Surface surface(cairo_image_surface_create_for_data(
      reinterpret_cast<unsigned char*>(pixels.argb.data()), CAIRO_FORMAT_RGB24, pixels.size.width,
      pixels.size.height, 4 * pixels.size.width));
  const Context cairo(cairo_create(surface.get()));
  cairo_scale(cairo.get(), dpi / 72, dpi / 72);
  cairo_set_source_rgb(cairo.get(), 1, 1, 1);
  cairo_paint(cairo.get());
  draw(drawing, cairo.get(), {0, 0, points(size.width), points(size.height)}, nullptr);
  require_success(cairo_status(cairo.get()));
  cairo_surface_flush(surface.get());
  return picture::encode_png(pixels, dpi);
}

}  // namespace mullion::paper
