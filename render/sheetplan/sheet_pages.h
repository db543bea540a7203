#pragma once

// A summary, and a page for each sheet of a plan: the sheet to scale, its cuts numbered in order,
// the setting of the stop for each, and the order that each blank belongs to.

#include <string>

#include "engine/sheets/report/report.h"
#include "render/paper/document.h"

namespace mullion {

struct SheetPageOptions {
  std::string title;  // such as the orders' references
  std::string date;   // ISO 8601; empty: a fixed date
  paper::PageSize page{sixty_fourths(544), inches(11)};
  bool summary = true;  // before the sheets
  Locale locale{};
};

// Letter paper (ANSI A, 8.5 x 11 in) or A4 (ISO 216) as is usual in the territory; without one,
// Letter for a scale in inches.
paper::PageSize usual_page(Unit unit, const Locale& locale = {});

// A PDF. A plan without sheets gives one page that says so.
std::string render_sheet_pages(const SheetReport& report, const SheetPageOptions& options);

}  // namespace mullion
