#include <cmath>
#include <stdexcept>

#include "render/paper/cairo.h"
#include "render/paper/document.h"

namespace mullion::paper {
namespace {

constexpr double largest_png_side = 30'000;
constexpr double largest_png_area = 200e6;  // pixels

}  // namespace

std::string write_png(const Drawing& drawing, const PageSize& size, double dpi) {
  const double width = std::ceil(points(size.width) * dpi / 72);
  const double height = std::ceil(points(size.height) * dpi / 72);
  if (width > largest_png_side || height > largest_png_side || width * height > largest_png_area) {
    throw std::runtime_error("the picture would be too large; ask for fewer dots per inch");
  }
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
