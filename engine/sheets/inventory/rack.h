#pragma once

// Pieces that are taken from the rack and put back by hand, each by its code, which is its id.

#include <string>

#include "engine/sheets/inventory/ledger.h"

namespace mullion {

struct RackMove {
  Stock stock;       // afterwards
  StockPiece piece;  // as it is then; with none on hand where it is gone
};

// Act::taken and Act::lost take one away, Act::returned puts one back: of a piece in the stock, or
// of an off-cut that once was there and whose size the ledger knows. Errors: "rack-unknown-code"
// (with a near id), "rack-none-left", "rack-not-counted" (a sheet without a count).
Result<RackMove> move_piece(const Stock& stock, const Ledger& ledger, const std::string& code,
                            Act act);

}  // namespace mullion
