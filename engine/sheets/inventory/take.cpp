#include "engine/sheets/inventory/take.h"

#include <algorithm>
#include <set>

namespace mullion {
namespace {

class NewIds {
 public:
  explicit NewIds(const Stock& stock) {
    for (const StockPiece& piece : stock.pieces) taken_.insert(piece.id);
  }

  std::string next() {
    std::string id;
    do {
      id = "offcut-" + std::to_string(++last_);
    } while (!taken_.insert(id).second);
    return id;
  }

 private:
  std::set<std::string> taken_;
  int last_ = 0;
};

}  // namespace

std::vector<KeptOffcut> kept_offcuts(const SheetPlan& plan, const Stock& stock,
                                     const KeepRule& keep) {
  std::vector<KeptOffcut> kept;
  NewIds ids(stock);
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      for (const Leftover& leftover : leftovers_of(sheet, plan.limits.kerf, keep)) {
        if (!leftover.keep) continue;
        KeptOffcut offcut{sheet.number, leftover.rect, {}};
        offcut.piece.id = ids.next();
        offcut.piece.board = board.board;
        offcut.piece.width = leftover.rect.width();
        offcut.piece.height = leftover.rect.height();
        offcut.piece.on_hand = 1;
        offcut.piece.offcut = true;
        kept.push_back(std::move(offcut));
      }
    }
  }
  return kept;
}

Stock stock_after(const SheetPlan& plan, const Stock& stock, const KeepRule& keep) {
  Stock after = stock;
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      if (sheet.stock < 0) continue;
      std::optional<int>& on_hand = after.pieces[static_cast<std::size_t>(sheet.stock)].on_hand;
      if (on_hand) --*on_hand;
    }
  }
  after.pieces.erase(
      std::remove_if(after.pieces.begin(), after.pieces.end(),
                     [](const StockPiece& piece) { return piece.offcut && piece.on_hand == 0; }),
      after.pieces.end());
  for (KeptOffcut& offcut : kept_offcuts(plan, stock, keep)) {
    after.pieces.push_back(std::move(offcut.piece));
  }
  return after;
}

}  // namespace mullion
