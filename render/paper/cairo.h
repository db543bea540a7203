#pragma once

// Drawings on Cairo's surfaces, for the writers of PDF and PNG. No header that others include shows
// Cairo or Pango.

#include <cairo.h>

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "render/paper/drawing.h"
#include "render/paper/pdf_images.h"

namespace mullion::paper {

struct DestroyCairo {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroyCairo>;
using Context = std::unique_ptr<cairo_t, DestroyCairo>;

// What the pages of a PDF share.
struct PdfParts {
  std::vector<std::vector<std::string>> layers;  // names, by page, in the order in which they begin
  KeptJpegs jpegs;
  std::map<std::shared_ptr<const Drawing>, Surface> stamps;  // drawings that pages repeat
};

// What lies outside the visible box is left out, item by item and, in strokes, subpath by subpath.
// Without the parts of a PDF, layers are no matter, and pictures are decoded for the surface.
// Throws std::runtime_error where a picture cannot be decoded.
void draw(const Drawing& drawing, cairo_t* cairo, const Box& visible, PdfParts* pdf);

// Throws std::runtime_error where Cairo has given up.
void require_success(cairo_status_t status);

// Draws the text from its upper left corner, in the source's colour.
void show(const Text& text, cairo_t* cairo);

}  // namespace mullion::paper
