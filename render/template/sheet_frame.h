#pragma once

// A sheet of paper as template pages use it: what can be printed on, with a foot of check rules.

#include "render/paper/tiling.h"
#include "render/template/pages.h"

namespace mullion {

inline constexpr Length sheet_foot = millimetres(23);

struct SheetFrame {
  paper::PageSize size;
  paper::Box content;  // printable, above the foot; in true lengths, before the printer's faults
                       // are undone
  paper::Box foot;
};

// How much of the page is left to draw on when the printer's faults are undone.
paper::Spot shrinkage(const TemplateOptions& options, const paper::SheetSize& sheet);

SheetFrame sheet_frame(const TemplateOptions& options, const paper::PageSize& size);

// Check rules, the sheet's name and subject. Returns what is left of the foot at its right for a
// map.
paper::Box draw_foot(paper::Drawing& drawing, const SheetFrame& frame, const BoardView& view,
                     const TemplateOptions& options, const std::string& name);

}  // namespace mullion
