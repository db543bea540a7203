#pragma once

// What a sheet plan comes to: boards, sheets, cost, bound, use, what the fallouts save, off-cuts to
// keep, and what is missing; then what to take from the rack and to buy, and what board costs each
// order. As many pages as that takes.

#include "render/sheetplan/sheet_pages.h"

namespace mullion {

void add_summary(std::vector<paper::Page>& document, const SheetReport& report,
                 const SheetPageOptions& options);

}  // namespace mullion
