#include "engine/sheets/stock/stock.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace mullion {

const std::vector<SheetSize>& common_sheet_sizes(Unit unit) {
  static const std::vector<SheetSize> imperial = {{inches(32), inches(40)},
                                                  {inches(40), inches(60)}};
  static const std::vector<SheetSize> metric = {{millimetres(810), millimetres(1020)},
                                                {millimetres(1020), millimetres(1520)}};
  return unit == Unit::inch ? imperial : metric;
}

bool same_piece(const StockPiece& a, const StockPiece& b) {
  const auto key = [](const StockPiece& piece) {
    return std::tie(piece.id, piece.board, piece.width, piece.height, piece.trim, piece.price,
                    piece.stated_price, piece.on_hand, piece.offcut, piece.supplier, piece.pack);
  };
  return key(a) == key(b);
}

const StockPiece* find_piece(const std::vector<StockPiece>& pieces, std::string_view id) {
  const auto found = std::find_if(pieces.begin(), pieces.end(),
                                  [&](const StockPiece& piece) { return piece.id == id; });
  return found == pieces.end() ? nullptr : &*found;
}

std::optional<Board> listed_board(const Board& wanted, const Stock& stock) {
  std::vector<Board> fitting;
  for (const StockPiece& piece : stock.pieces) {
    const Board& board = piece.board;
    if (board == wanted) return board;
    const bool colour = board.any_colour || wanted.any_colour || board.colour == wanted.colour;
    const Length apart =
        std::max(board.thickness, wanted.thickness) - std::min(board.thickness, wanted.thickness);
    if (board.name != wanted.name || !colour || apart > thickness_tolerance) continue;
    if (std::find(fitting.begin(), fitting.end(), board) == fitting.end()) fitting.push_back(board);
  }
  if (fitting.size() > 1) {
    std::erase_if(fitting, [&](const Board& board) { return board.thickness != wanted.thickness; });
  }
  return fitting.size() == 1 ? std::optional(fitting.front()) : std::nullopt;
}

Stock common_stock(const std::vector<Board>& boards, Unit unit) {
  Stock stock;
  stock.unit = unit;
  for (const Board& board : boards) {
    for (const SheetSize& size : common_sheet_sizes(unit)) {
      StockPiece sheet;
      sheet.id = "S" + std::to_string(stock.pieces.size() + 1);
      sheet.board = board;
      sheet.width = size.width;
      sheet.height = size.height;
      stock.pieces.push_back(sheet);
    }
  }
  return with_known_prices(std::move(stock));
}

Stock with_known_prices(Stock stock) {
  for (const StockPiece& piece : stock.pieces) {
    if (!piece.offcut && piece.price > 0) return stock;
  }
  constexpr double mm_per_cm = 10;
  const auto side = [&stock](Length length) {
    return stock.unit == Unit::inch ? to_inches(length) : to_millimetres(length) / mm_per_cm;
  };
  for (StockPiece& piece : stock.pieces) {
    if (piece.offcut) continue;
    piece.price = std::max<std::int64_t>(std::llround(side(piece.width) * side(piece.height)), 1);
  }
  stock.currency.clear();
  stock.priced_by_area = true;
  return stock;
}

}  // namespace mullion
