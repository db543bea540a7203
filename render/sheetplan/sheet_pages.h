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
};

// Letter paper (ANSI A, 8.5 x 11 in) for a scale in inches, else A4 (ISO 216).
paper::PageSize usual_page(Unit unit);

// A PDF. A plan without sheets gives one page that says so.
std::string render_sheet_pages(const SheetReport& report, const SheetPageOptions& options);

}  // namespace mullion
