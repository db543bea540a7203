#pragma once

// A summary, and a page for each sheet of a plan: the sheet to scale, its cuts numbered in order,
// the setting of the stop for each, and the order that each blank belongs to. Each sheet is drawn
// as large as its page allows, at a scale that the page states roughly: it is to be read, not
// measured.

#include <string>

#include "engine/sheets/report/report.h"
#include "render/paper/document.h"

namespace mullion {

struct SheetPageOptions {
  std::string title;  // such as the orders' references
  std::string date;   // ISO 8601; empty: a fixed date
  paper::PageSize page = paper::letter_page;
  bool summary = true;  // before the sheets
  Locale locale{};
};

// A PDF. A plan without sheets gives one page that says so.
std::string render_sheet_pages(const SheetReport& report, const SheetPageOptions& options);

}  // namespace mullion
