#pragma once

// Pages as pixels, drawn by renderers that we did not write.

#include <string>
#include <vector>

namespace oracle {

struct Raster {
  int width = 0, height = 0;
  double dpi = 0;
  std::vector<unsigned char> grey;  // row by row from the top, 0 black to 255 white

  int at(int x, int y) const { return grey.at(static_cast<std::size_t>(y) * width + x); }
  // The darkest pixel within `reach` pixels of a place in points.
  int darkest_near(double x, double y, int reach = 1) const;
};

enum class Renderer { poppler, mupdf, ghostscript };

// Pages count from 1. Throws std::runtime_error where the program fails.
Raster rasterise_pdf(const std::string& path, int page, double dpi, Renderer renderer);
Raster rasterise_svg(const std::string& path, double dpi);  // by librsvg
Raster read_png(const std::string& path, double dpi);       // by Cairo

}  // namespace oracle
