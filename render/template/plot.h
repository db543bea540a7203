#pragma once

// The cut lines alone, for cutting plotters and laser cutters: closed outlines, no text, no
// over-cuts. Mirrored as every template: the board lies face down. Openings come first, then the
// lines of V-grooves on the back, then the edge of the layer's blank, so that the board holds while
// they are cut.
//
// The kerf is what the tool takes away. With it, openings are drawn half a kerf smaller and the
// blank's edge half a kerf larger, so that what is left has the right size. Of a groove both sides
// are kept: its line is the middle of what is taken away.

#include <string>
#include <vector>

#include "render/template/pages.h"

namespace mullion {

struct PlotLine {
  enum class Kind { opening, groove, outer_edge };
  Kind kind = Kind::opening;
  std::string id;  // "opening-1", "groove-1", "outer-edge"
  Outline outline;
};

struct Plot {
  Length width, height;  // of the page; the outer edge with half a kerf just fits in
  std::vector<PlotLine> lines;
};

// The error is one sentence: an outline that half a kerf does not fit into.
tl::expected<Plot, std::string> plot_of(const Cuts& cuts, const BoardCuts& board, Length kerf);

// Hairlines of 1/1000 in, one group of an SVG a line.
SheetPage plot_page(const Plot& plot, const std::string& title);

// DXF of release 12: LINE and ARC entities in millimetres, y upward, on the layers OPENINGS,
// GROOVES and OUTER_EDGE. Curves are arcs within 0.005 mm.
std::string write_dxf(const Plot& plot);

}  // namespace mullion
