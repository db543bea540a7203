#pragma once

// The ledger of a stock file: what was done to the stock, one line an act, from which the stock can
// be made anew. It stands beside the file, as "stock.xml.ledger", and lines are only added.
//
// A line is a JSON object (RFC 8259) in UTF-8:
//
//   number   from 1
//   act      "opened"     the first line: the stock as it then stood
//            "cut"        for orders, by a plan
//            "spoiled"    cut again by a plan, since a mat was spoiled
//            "taken"      from the rack, and "returned" to it, by hand
//            "lost"
//            "corrected"  somebody edited the stock file
//            "undone"
//   time     in UTC, as "2026-03-02T16:05:00Z"
//   stock    of the first line and of what was corrected: unit, currency, offcutValue
//   changes  [{was, is}]: a piece before and after; null where there was or is none. A piece is
//            {id, kind ("sheet", "offcut"), board, colour, thickness, width, height, trim (left,
//            top, right, bottom), price, onHand, supplier, pack}, in the words of the stock file
//            with units; colour, trim, price, onHand, supplier and pack are left out as there
//   orders   of what was cut or spoiled: [{order, mats, of}], how many mats of how many ordered
//   bought   of what was cut: [{id, sheets}], sheets that are not counted and are bought as needed
//   undoes   the number of the line that is undone

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/sheets/stock/stock.h"

namespace mullion {

inline constexpr std::size_t largest_ledger = 1u << 28;  // bytes

enum class Act { opened, cut, spoiled, taken, returned, lost, corrected, undone };
const char* word_for(Act act);

struct PieceChange {
  std::optional<StockPiece> was, is;
};

struct CutMats {
  std::string order;
  int mats = 0, of = 0;
};

struct Bought {
  std::string id;
  int sheets = 0;
};

struct StockHead {
  Unit unit = Unit::inch;
  std::string currency;
  int offcut_percent = 0;
  friend bool operator==(const StockHead&, const StockHead&) = default;
};

struct LedgerLine {
  int number = 0;
  Act act = Act::opened;
  std::string time;
  std::optional<StockHead> stock;
  std::vector<PieceChange> changes;
  std::vector<CutMats> orders;
  std::vector<Bought> bought;
  int undoes = 0;
};

struct Ledger {
  std::vector<LedgerLine> lines;
  StockHead head;
  std::map<std::string, StockPiece> pieces;  // that there are after the last line, by id
  std::map<std::string, StockPiece> last;    // every piece that there ever was, as it last was
};

std::string ledger_path(const std::string& stock_path);

// Each line must follow from those before it. Errors: "ledger-damaged", with the line.
Result<Ledger> parse_ledger(std::string_view text, const std::string& file);
// Of a stock file; without lines where it has none.
Result<Ledger> read_ledger(const std::string& stock_path);

std::string format_line(const LedgerLine& line);
// Adds the line, which must follow from those before.
void add_line(Ledger& ledger, LedgerLine line);

// The stock made anew.
Stock stock_of(const Ledger& ledger);

// What turns one set of pieces into the other.
std::vector<PieceChange> changes_between(const std::vector<StockPiece>& before,
                                         const std::vector<StockPiece>& after);

// The last act that can be undone and is not; null where there is none. What was corrected by hand
// is corrected by hand again.
const LedgerLine* last_to_undo(const Ledger& ledger);

// The stock without what that act did. Errors: "stock-cannot-undo", where a piece that it put on
// the rack is no longer there.
Result<Stock> without_act(const Stock& stock, const LedgerLine& line);

// The last act that cut mats of the order, where it cannot be that so many more are still to be
// made: fewer are left of those that were ordered. Null where the order may be cut.
const LedgerLine* cut_before(const Ledger& ledger, const std::string& order, int mats);

}  // namespace mullion
