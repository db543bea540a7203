#pragma once

// The first page before the sheets: the whole board to scale with its dimensions, where each sheet
// or piece lies, and how to put them on the board.

#include <string>
#include <vector>

#include "render/template/pages.h"

namespace mullion {

struct OverviewPart {
  std::string name;
  Rect rect;  // on the board, seen from behind
};

struct Overview {
  std::string title;
  std::vector<OverviewPart> parts;
  std::vector<std::string> steps;
};

// Letter or A4, or the sheet itself where it is about as small.
SheetPage overview_page(const BoardView& view, const TemplateOptions& options,
                        const Overview& overview);

}  // namespace mullion
