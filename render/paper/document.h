#pragma once

// Paper: a document of one or more pages, drawn in memory and given as bytes.
//
// PDF documents have as many pages as are asked for, each of its own size; SVG and PNG have one.
// PDF user units are 1/72 in (ISO 32000-1, 8.3.2.3); SVG sizes are written in points, which are
// 1/72 in too (CSS Values and Units). The same drawing gives the same bytes: the only date in a
// document is the one it is given. PDF asks its viewer for no print scaling (ISO 32000-1, table
// 150).

#include <memory>
#include <string>

#include "engine/length/length.h"
#include "render/paper/canvas.h"

namespace mullion::paper {

enum class Format { pdf, svg, png };

struct PageSize {
  Length width, height;
};

struct DocumentInfo {
  std::string title;
  std::string date;      // ISO 8601; empty: the fixed date 2000-01-01
  double png_dpi = 150;  // PNG only
};

class Document {
 public:
  Document(Format format, DocumentInfo info);
  Document(const Document&) = delete;
  Document& operator=(const Document&) = delete;
  ~Document();

  // A new page and its canvas, which is valid until the next page or finish(). A bookmark leads to
  // it in a PDF. Throws std::logic_error for a second page of an SVG or PNG.
  Canvas& add_page(PageSize size, const std::string& bookmark);

  // The bytes of the whole document; the last call. Throws std::runtime_error where it could not
  // be drawn, such as a PNG that would be too large.
  std::string finish();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace mullion::paper
