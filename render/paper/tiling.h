#pragma once

// How an area larger than a sheet is divided among sheets.
//
// Exact lengths. The sheets form rows and columns; each shows its own tile of the area and, where
// sheets are laid over one another, a strip more on the right and below. The number of sheets is
// the smallest there is, upright or across, unless more is asked for; among divisions into so few,
// joins keep their distance from the places that are to be avoided as far as possible, and tiles
// are as even as possible.

#include <tl/expected.hpp>
#include <vector>

#include "engine/layout/layout.h"
#include "render/paper/sheet_size.h"

namespace mullion::paper {

// What a correction for the printer leaves of a page's printable width and height.
struct Shrink {
  double x = 1, y = 1;
};

struct TilingRequest {
  Rect area;
  std::vector<Length> avoid_x, avoid_y;  // where no join should run, such as corners of openings
  Length clearance;                      // least distance from those
  SheetSize sheet;
  Sides margin, margin_turned;          // unprintable, of an upright page and of one across
  Length footer;                        // kept free at the foot of each page
  Length overlap;                       // of neighbours; zero: cut and butted
  Shrink shrink, shrink_turned;         // of an upright page, and of one that lies across
  int more_columns = 0, more_rows = 0;  // than the fewest
};

struct Tiling {
  Length page_width, page_height;
  std::vector<Length> columns, rows;  // edges of the tiles, first to last: one more than tiles
  int unwanted_joins = 0;             // that run too near to a place to be avoided
  std::size_t sheets() const { return (columns.size() - 1) * (rows.size() - 1); }
};

// The error is one sentence: what the sheet is too small for.
tl::expected<Tiling, std::string> plan_tiling(const TilingRequest& request);

}  // namespace mullion::paper
