#include "engine/sheets/plan/keep_rule.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace mullion {

bool KeepRule::keeps(Length width, Length height) const {
  return std::min(width, height) >= shorter && std::max(width, height) >= longer;
}

std::int64_t offcut_value(const Stock& stock, const Board& board, Length width, Length height,
                          const KeepRule& keep) {
  if (stock.offcut_percent == 0 || !keep.keeps(width, height)) return 0;
  const auto area = [](Length w, Length h) { return to_inches(w) * to_inches(h); };
  std::optional<double> cheapest;  // per square inch
  for (const StockPiece& piece : stock.pieces) {
    if (piece.offcut || piece.board != board) continue;
    const double price = static_cast<double>(piece.price) / area(piece.width, piece.height);
    cheapest = std::min(cheapest.value_or(price), price);
  }
  constexpr double hundred = 100;
  return std::llround(cheapest.value_or(0) * area(width, height) * stock.offcut_percent / hundred);
}

Stock with_offcut_values(Stock stock, const KeepRule& keep) {
  for (std::size_t i = 0; i < stock.pieces.size(); ++i) {
    const StockPiece& piece = stock.pieces[i];
    if (!piece.offcut || piece.stated_price || piece.price != 0) continue;
    const std::int64_t value =
        offcut_value(stock, piece.board, piece.usable_width(), piece.usable_height(), keep);
    stock.pieces[i].price = value;
  }
  return stock;
}

}  // namespace mullion
