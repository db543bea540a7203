#pragma once

// What a shop has, and can buy, to cut from: sheets and off-cuts of each board.
//
// Exact lengths; prices in hundredths of the stock's currency. A sheet with grain has it along its
// height.

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "engine/sheets/stock/board.h"

namespace mullion {

struct StockPiece {
  std::string id;  // one of a kind in the stock; written on an off-cut
  Board board;
  Length width, height;
  Sides trim;                  // damaged edges, cut off before anything else
  std::int64_t price = 0;      // of one; an off-cut usually costs nothing any more
  bool stated_price = false;   // by the stock file, be it nothing
  std::optional<int> on_hand;  // nothing: bought as needed
  bool offcut = false;
  std::string supplier;  // of a sheet; may be empty
  int pack = 1;          // sheets of it are bought by so many
  Place place;

  Length usable_width() const { return width - trim.left - trim.right; }
  Length usable_height() const { return height - trim.top - trim.bottom; }
};

struct Stock {
  std::string currency;  // as printed after a price; may be empty
  // Prices are areas, in whole square inches (square centimetres where the unit is metric), since
  // none are known: the least cost is the least board.
  bool priced_by_area = false;
  Unit unit = Unit::inch;
  // What an off-cut that is worth keeping counts for, in percent of what so much of a new sheet of
  // its board costs: the shop's rule. Of 0 an off-cut costs nothing.
  int offcut_percent = 0;
  std::vector<StockPiece> pieces;
  std::set<std::string> gone_ids;  // of pieces that are no longer there: not to be used again
  std::string file;
  Problems remarks;  // notes on what the file says and was taken a little otherwise
};

// The same piece, wherever it stands in a file.
bool same_piece(const StockPiece& a, const StockPiece& b);

// Null where no piece has that id.
const StockPiece* find_piece(const std::vector<StockPiece>& pieces, std::string_view id);

// The board of the stock that a layer of the wanted one is cut from. Where no piece has the same
// name, colour and thickness, a thickness that is the same within thickness_tolerance is taken for
// the same, and a colour that either side leaves open for any. Nothing where that fits no board, or
// several.
std::optional<Board> listed_board(const Board& wanted, const Stock& stock);

// 1.5 mm, 1.6 mm and 1/16 in name the same board. Our own figure: sheets of one kind differ by as
// much, boards of other plies by more.
inline constexpr Length thickness_tolerance = Length::from_ticks(ticks_per_mm / 10);

// The sizes that sheets of mat board are commonly sold in: 32 x 40 and 40 x 60 in, 81 x 102 and
// 102 x 152 cm. Common practice and suppliers' statements; no published standard.
struct SheetSize {
  Length width, height;
};
const std::vector<SheetSize>& common_sheet_sizes(Unit unit);

// A stock for a shop that has stated none: the common sizes of each board, as many as are needed,
// priced by area.
Stock common_stock(const std::vector<Board>& boards, Unit unit);

// The stock itself where a sheet has a price; else the same pieces with the sheets priced by area,
// off-cuts still costing nothing.
Stock with_known_prices(Stock stock);

}  // namespace mullion
