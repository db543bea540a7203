#include "tests/oracle/raster.h"

#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <stdexcept>

#include "tests/oracle/program.h"

namespace oracle {
namespace {

// Binary greymap of the Netpbm family, 8 bits a pixel, without comments.
Raster read_pgm(const std::string& path, double dpi) {
  const std::string bytes = read_file(path);
  std::istringstream in(bytes);
  std::string magic;
  Raster raster;
  int most = 0;
  while (in >> magic && magic.starts_with('#')) in.ignore(1000, '\n');
  const auto number = [&in] {
    while (in >> std::ws && in.peek() == '#') in.ignore(1000, '\n');
    int value = 0;
    in >> value;
    return value;
  };
  raster.width = number();
  raster.height = number();
  most = number();
  const auto start = static_cast<std::size_t>(in.tellg()) + 1;
  const std::size_t count = static_cast<std::size_t>(raster.width) * raster.height;
  if (magic != "P5" || most != 255 || bytes.size() < start + count) {
    throw std::runtime_error(path + " is not a greymap");
  }
  raster.dpi = dpi;
  raster.grey.assign(bytes.begin() + static_cast<std::ptrdiff_t>(start),
                     bytes.begin() + static_cast<std::ptrdiff_t>(start + count));
  return raster;
}

void check(const std::vector<std::string>& words) {
  const Run result = run(words);
  if (result.status != 0) throw std::runtime_error(words[0] + ": " + result.err);
}

}  // namespace

int Raster::darkest_near(double x, double y, int reach) const {
  const int column = static_cast<int>(std::floor(x * dpi / 72));
  const int row = static_cast<int>(std::floor(y * dpi / 72));
  int darkest = 255;
  for (int i = std::max(0, row - reach); i <= std::min(height - 1, row + reach); ++i) {
    for (int j = std::max(0, column - reach); j <= std::min(width - 1, column + reach); ++j) {
      darkest = std::min(darkest, at(j, i));
    }
  }
  return darkest;
}

Raster rasterise_pdf(const std::string& path, int page, double dpi, Renderer renderer) {
  const std::string number = std::to_string(page), dots = std::to_string(std::lround(dpi));
  const std::string base = path + ".raster", out = base + ".pgm";
  switch (renderer) {
    case Renderer::poppler:
      check(
          {"pdftoppm", "-gray", "-singlefile", "-r", dots, "-f", number, "-l", number, path, base});
      break;
    case Renderer::mupdf:
      check({"mutool", "draw", "-q", "-c", "gray", "-r", dots, "-o", out, path, number});
      break;
    case Renderer::ghostscript:
      check({"gs", "-q", "-dBATCH", "-dNOPAUSE", "-dSAFER", "-dTextAlphaBits=4",
             "-dGraphicsAlphaBits=4", "-sDEVICE=pgmraw", "-r" + dots, "-dFirstPage=" + number,
             "-dLastPage=" + number, "-sOutputFile=" + out, path});
      break;
  }
  return read_pgm(out, dpi);
}

Raster rasterise_svg(const std::string& path, double dpi) {
  const std::string out = path + ".raster.png", dots = std::to_string(std::lround(dpi));
  check({"rsvg-convert", "-d", dots, "-p", dots, "-b", "white", "-o", out, path});
  return read_png(out, dpi);
}

Raster read_png(const std::string& path, double dpi) {
  cairo_surface_t* surface = cairo_image_surface_create_from_png(path.c_str());
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) {
    cairo_surface_destroy(surface);
    throw std::runtime_error("cannot read " + path);
  }
  Raster raster;
  raster.dpi = dpi;
  raster.width = cairo_image_surface_get_width(surface);
  raster.height = cairo_image_surface_get_height(surface);
  const unsigned char* data = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < raster.height; ++y) {
    for (int x = 0; x < raster.width; ++x) {
      const unsigned char* pixel = data + static_cast<std::ptrdiff_t>(y) * stride + x * 4;
      raster.grey.push_back(static_cast<unsigned char>((pixel[0] + pixel[1] + pixel[2]) / 3));
    }
  }
  cairo_surface_destroy(surface);
  return raster;
}

}  // namespace oracle
