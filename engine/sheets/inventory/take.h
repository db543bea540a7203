#pragma once

// The stock after a plan has been carried out, and the off-cuts and fallouts that are put into it.
//
// Exact lengths, as in the plan, which must have been made from the same stock. Which of them is
// worth keeping is the shop's rule (KeepRule). A fallout is kept trimmed to the rectangle that can
// be used of it (engine/sheets/plan/blanks.h).

#include "engine/sheets/inventory/ledger.h"
#include "engine/sheets/plan/cuts.h"
#include "engine/sheets/stock/stock.h"

namespace mullion {

// What the plan leaves and what is worth keeping, with the id that is to be written on it.
struct KeptOffcut {
  int sheet = 0;     // its number in the plan; 0: fallouts
  Rect rect = {};    // in that sheet
  StockPiece piece;  // of which there may be several, of fallouts that are alike
  int board = 0;     // of a fallout: index into the plan's boards,
  int line = 0;      // and into that board's lines
  int opening = 0;   // the first of its window
};

// In the order of the plan's sheets, then the fallouts of which nothing is cut. An off-cut of a
// sheet that was bought at a price is kept at no price, since its sheet is paid for.
std::vector<KeptOffcut> kept_offcuts(const SheetPlan& plan, const Stock& stock,
                                     const KeepRule& keep);

// Takes the sheets and the off-cuts that the plan cuts, and adds those that it leaves. Pieces of
// which none is left go, except sheets, which stay in the list with none on hand.
Stock stock_after(const SheetPlan& plan, const Stock& stock, const KeepRule& keep);

// The sheets of the plan that are not counted and are bought as needed.
std::vector<Bought> bought_for(const SheetPlan& plan, const Stock& stock);

}  // namespace mullion
