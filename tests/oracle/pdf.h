#pragma once

// What a PDF page holds, as MuPDF's trace of it tells: in points from the page's upper left corner.

#include <string>
#include <vector>

namespace oracle {

struct PdfLine {
  double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
  bool is_vertical() const { return x1 == x2; }
  bool is_horizontal() const { return y1 == y2; }
  double length() const;
};

// A stroked path: its straight pieces, and the end points of its curved ones.
struct PdfStroke {
  double width = 0;
  double grey = 0;  // mean of red, green and blue; 0 is black
  std::vector<PdfLine> lines;
  bool closed = false;
};

struct PdfPage {
  double width = 0, height = 0;
  std::vector<PdfStroke> strokes;
  std::vector<PdfLine> fills;   // bounding boxes of opaque filled paths, as diagonals
  std::vector<PdfLine> images;  // what clips leave of upright images' boxes, as diagonals
};

// Throws std::runtime_error where the file cannot be read.
std::vector<PdfPage> read_pdf(const std::string& path);

// The text of a PDF as poppler reads it, in reading order.
std::string pdf_text(const std::string& path);

}  // namespace oracle
