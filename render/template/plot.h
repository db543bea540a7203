#pragma once

// The cut lines alone, for cutting plotters and laser cutters: closed outlines, no over-cuts.
//
// Seen from the back as every template, since the board lies face down; or from the front, with the
// lines as they are on the face. In a layer's order of cutting: openings come first, then the lines
// of V-grooves, then the edge of the layer's blank, so that the board holds while they are cut.
//
// The kerf is what the tool takes away. With it, openings are drawn half a kerf smaller and the
// blank's edge half a kerf larger, so that what is left has the right size. Of a groove both sides
// are kept: its line is the middle of what is taken away. The tool may come to an opening's line,
// or to the blank's edge, from the waste, and run over the place where the line closes.

#include <string>
#include <vector>

#include "render/template/pages.h"
#include "render/template/tool_path.h"

namespace mullion {

struct PlotLine {
  enum class Kind { opening, groove, outer_edge };
  Kind kind = Kind::opening;
  int layer = 1;
  std::string id;  // "opening-1", "groove-1", "outer-edge"
  Outline outline;
  ToolPath path;     // the outline, with its leads
  bool led = false;  // the path is not just the outline
};

// Lengths are from the upper left corner of the first layer's blank, as it is seen.
struct Plot {
  Rect page;  // the outer edges with half a kerf, and their leads, just fit in
  std::vector<PlotLine> lines;
  std::vector<std::string> titles;  // of its layers: "W-0103, layer 1 of 2: ..., from behind"
};

struct PlotOptions {
  Length kerf;
  Leads leads;
  bool from_front = false;
};

// The error is one sentence: an outline that half a kerf or a lead-in does not fit into.
tl::expected<Plot, std::string> plot_of(const BoardView& view, const PlotOptions& options);

// Hairlines of 1/1000 in, one group of an SVG a line; those of several layers in a group each.
SheetPage plot_page(const Plot& plot, const std::string& title);

// DXF of release 2000 in millimetres ($INSUNITS 4), y upward, with its origin at the lower left
// corner of the first layer's blank. A closed LWPOLYLINE with bulges a line, a CIRCLE where it is
// one; curves are arcs within 0.005 mm. Layers LAYER_1_CUT, LAYER_1_GROOVE, LAYER_1_OUTLINE and
// LAYER_1_TEXT; in the last, below the board, a line says what the layer is.
std::string write_dxf(const Plot& plot);

}  // namespace mullion
