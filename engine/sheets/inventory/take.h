#pragma once

// The stock after a plan has been carried out, and the off-cuts that are put back into it.
//
// Exact lengths, as in the plan, which must have been made from the same stock. Which off-cut is
// worth keeping is the shop's rule (KeepRule).

#include "engine/sheets/plan/cuts.h"
#include "engine/sheets/stock/stock.h"

namespace mullion {

// An off-cut that the plan leaves and that is worth keeping, with the id that is to be written on
// it.
struct KeptOffcut {
  int sheet = 0;  // its number in the plan
  Rect rect;      // in that sheet
  StockPiece piece;
};

// In the order of the plan's sheets. An off-cut of a sheet that was bought at a price is kept at no
// price, since its sheet is paid for.
std::vector<KeptOffcut> kept_offcuts(const SheetPlan& plan, const Stock& stock,
                                     const KeepRule& keep);

// Takes the sheets and the off-cuts that the plan cuts, and adds those that it leaves. Pieces of
// which none is left go, except sheets, which stay in the list with none on hand.
Stock stock_after(const SheetPlan& plan, const Stock& stock, const KeepRule& keep);

}  // namespace mullion
