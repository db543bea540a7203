#pragma once

// Documents: drawings on pages, written as PDF, SVG or PNG, each by one writer.
//
// PDF documents have as many pages as there are, each of its own size; SVG and PNG have one. PDF
// user units are 1/72 in (ISO 32000-1, 8.3.2.3). The same pages give the same bytes: the only date
// in a document is the one it is given. PDF asks its viewer for no print scaling (ISO 32000-1,
// table 150).
//
// Throws std::logic_error for no page, or for a second one of an SVG or PNG, and std::runtime_error
// where a page could not be drawn, such as a PNG that would be too large.

#include <string>
#include <vector>

#include "render/paper/drawing.h"
#include "render/paper/sheet_size.h"

namespace mullion::paper {

enum class Format { pdf, svg, png };

struct Page {
  PageSize size;
  std::string title;  // a bookmark of a PDF leads to it; empty: none
  Drawing drawing;
};

struct DocumentInfo {
  std::string title;
  std::string date;        // ISO 8601, PDF only; empty: the fixed date 2000-01-01
  double png_dpi = 150;    // PNG only
  bool one_sided = false;  // PDF only: asked of the viewer (ISO 32000-1, table 150)
};

std::string write(Format format, const std::vector<Page>& pages, const DocumentInfo& info);

std::string write_pdf(const std::vector<Page>& pages, const DocumentInfo& info);

// A size in mm and a user unit of 1 mm; texts are outlines named by aria-label.
std::string write_svg(const Drawing& drawing, const PageSize& size, const std::string& title);

// The elements alone, with points as units to two decimals, to be part of another SVG; the prefix
// begins their ids. What is for the screen alone is short: strokes that are the same but for place
// and width, such as those of a shadow, refer to one path.
std::string svg_elements(const Drawing& drawing, const std::string& prefix);

// On white. The dots per inch are kept as whole dots per metre in a pHYs chunk (ISO/IEC 15948,
// 11.3.5.3).
std::string write_png(const Drawing& drawing, const PageSize& size, double dpi);

}  // namespace mullion::paper
