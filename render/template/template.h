#pragma once

// The full-scale template that is taped to the back of a board.
//
// Mirrored, since the board lies face down: the edge of the layer's own blank, the cut lines with
// their over-cuts, the face edge dashed, the waste hatched, the lines of V-grooves that are cut on
// the back, and running dimensions from the edges of the blank, which can rest against the guide.
// What is cut is told by engine/cuts/cuts.h; where layers are overlaid, the top mat's edges are the
// frame and those of the other blanks are drawn too. Either one page of the board's size a layer,
// or sheets of any paper that are joined, with an overview before them, or small sheets of the
// corners alone. An SVG shows all layers in one drawing, a group each, where none is named; a PNG
// holds the one that is named.

#include <optional>
#include <string>
#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/job/job.h"
#include "engine/locale/locale.h"
#include "engine/shop/printer_profile.h"
#include "render/paper/document.h"
#include "render/paper/sheet_size.h"

namespace mullion {

struct TemplateOptions {
  paper::Format format = paper::Format::pdf;
  int layer = 0;  // from 1; 0: all of them
  double png_dpi = 150;
  bool overlaid = false;                  // all layers in one drawing, a colour each
  std::optional<paper::SheetSize> sheet;  // nothing: pages of the board's size
  // 1/4 in at each edge of a sheet: common practice. Of a page as the paper is fed, upright.
  Sides unprintable{sixty_fourths(16), sixty_fourths(16), sixty_fourths(16), sixty_fourths(16)};
  bool sticks = false;    // marking sticks instead of the whole board
  bool light = false;     // for a projector: light lines on black, on a page of the board's size
  bool fewest = false;    // sheets, though joins then run by corners
  bool by_layer = false;  // sheets of each layer for itself, though all would be legible together
  bool butted = false;    // joints are cut on both sheets; else one lies on another
  bool corners_only = false;              // small sheets of the corners instead of the whole board
  std::optional<PrinterProfile> printer;  // its faults are undone
  bool plot_only = false;                 // hairlines of the cut lines, nothing else
  bool from_front = false;                // of a plot: not mirrored, the lines of the face
  Length kerf;                            // what the plotter takes away
  Length lead_in, lead_over;              // of its tool: from the waste, and over its start
  Locale locale{};
};

// Errors: a layer that there is not, what no cutter can cut, paper that is too small or would take
// too many sheets, sheets asked of an SVG or PNG, several layers asked of a PNG or of an SVG for a
// plotter. What is only too large for the cutter is drawn.
Result<std::vector<paper::Page>> template_pages(const Job& job, const Cuts& cuts,
                                                const TemplateOptions& options);

// Those pages in the format that the options name.
std::string write_template(const Job& job, const std::vector<paper::Page>& pages,
                           const TemplateOptions& options);

// Both.
Result<std::string> render_template(const Job& job, const Cuts& cuts,
                                    const TemplateOptions& options);

// The cut lines of the layer that is named, or of all, as DXF; see plot.h.
Result<std::string> render_dxf(const Job& job, const Cuts& cuts, const TemplateOptions& options);

// Where the mat's upper left corner lies on a page of the mat's size, seen from behind.
struct TemplatePage {
  paper::PageSize size;
  Length board_left, board_top;
};
TemplatePage template_page(const Mat& mat);

}  // namespace mullion
