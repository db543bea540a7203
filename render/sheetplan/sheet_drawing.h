#pragma once

// One sheet to scale: blanks with their orders, off-cuts, waste, and numbered cuts.

#include <vector>

#include "engine/sheets/inventory/take.h"
#include "engine/sheets/report/report.h"
#include "render/paper/drawing.h"

namespace mullion {

struct SheetDrawing {
  const PlannedSheet& sheet;
  const BoardPlan& board;
  const SheetReport& report;
  const std::vector<NumberedCut>& cuts;
  const std::vector<KeptOffcut>& kept;  // of the whole plan
  const Locale& locale;
};

// Draws within the box, its upper middle. Returns points on paper per point of board.
double draw_sheet(paper::Drawing& page, const SheetDrawing& drawing, const paper::Box& box);

}  // namespace mullion
