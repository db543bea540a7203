#pragma once

// The ledger in words, a line an act.

#include <string>

#include "engine/sheets/inventory/ledger.h"

namespace mullion {

// "3, 2026-03-02 16:05 UTC, cut: A-1017 (2 of 5); oat 5 to 4, offcut-7 added, 16 x 20 in".
std::string line_text(const LedgerLine& line, Unit unit = Unit::inch);

std::string ledger_text(const Ledger& ledger);

// The pieces on hand, board by board: "offcut-7, 16 x 20 in".
std::string rack_text(const Stock& stock);

}  // namespace mullion
