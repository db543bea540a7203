#pragma once

// A PNG file in memory that knows its size on paper.

#include <string>

typedef struct _cairo_surface cairo_surface_t;

namespace mullion::paper {

// The surface is a finished image of CAIRO_FORMAT_RGB24. The dots per inch are kept as whole dots
// per metre in a pHYs chunk (ISO/IEC 15948, 11.3.5.3). Throws std::runtime_error where libpng
// gives up.
std::string png_file(cairo_surface_t* surface, double dpi);

}  // namespace mullion::paper
