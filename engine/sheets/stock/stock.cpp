#include "engine/sheets/stock/stock.h"

#include <cmath>

namespace mullion {

const std::vector<SheetSize>& common_sheet_sizes(Unit unit) {
  static const std::vector<SheetSize> imperial = {{inches(32), inches(40)},
                                                  {inches(40), inches(60)}};
  static const std::vector<SheetSize> metric = {{millimetres(810), millimetres(1020)},
                                                {millimetres(1020), millimetres(1520)}};
  return unit == Unit::inch ? imperial : metric;
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
      sheet.price = std::llround(to_inches(size.width) * to_inches(size.height));
      stock.pieces.push_back(sheet);
    }
  }
  return stock;
}

}  // namespace mullion
