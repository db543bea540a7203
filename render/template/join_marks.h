#pragma once

// Marks on the joins of sheets. On each join of two sheets stand two diamonds, far apart, each with
// a line across. The join runs through their middles, so that either sheet shows one half: the
// halves close only where both the position and the angle of the sheets are right.

#include "engine/locale/locale.h"
#include "render/paper/drawing.h"
#include "render/paper/tiling.h"
#include "render/template/ink.h"
#include "render/template/needed_sheets.h"

namespace mullion {

// "2-3": row 2, column 3.
std::string sheet_name(std::size_t row, std::size_t column);

// The joins of one tile with those of its neighbours that there are, in the coordinates of the
// area; the neighbours are named beside the marks.
// Marks are put where they hide no ink of the board, as far as there is such a place.
void draw_joins(paper::Drawing& drawing, const paper::Tiling& tiling, std::size_t row,
                std::size_t column, const NeededSheets& sheets, const Ink& ink,
                const Locale& locale);

}  // namespace mullion
