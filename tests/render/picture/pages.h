#pragma once

// A page of 1 x 1 in that one picture fills, and its pixels as programs that we did not write show
// them.

#include <string>
#include <vector>

#include "render/paper/image.h"

namespace pages {

struct Tone {
  int red = 0, green = 0, blue = 0;
};

struct Page {
  int width = 0, height = 0;
  std::vector<unsigned char> rgb;
  Tone at(double across, double down) const;  // parts of the page
};

Page read_png(const std::string& path);

std::string drawn(const std::string& bytes, mullion::paper::Format format,
                  const mullion::picture::Crop& crop = {},
                  const mullion::picture::Resolution& resolution = {});

// PDF by poppler, SVG by librsvg, PNG as it is.
Page page_of(const std::string& bytes, mullion::paper::Format format);

// The same PDF by poppler, MuPDF and Ghostscript.
struct Rendering {
  std::string by;
  Page page;
};
std::vector<Rendering> renderings(const std::string& pdf);

}  // namespace pages
