#include "engine/sheets/inventory/take.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace mullion {
namespace {

class NewIds {
 public:
  explicit NewIds(const Stock& stock) {
    taken_ = stock.gone_ids;
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

StockPiece kept_piece(const Board& board, Length width, Length height, std::string id) {
  StockPiece piece;
  piece.id = std::move(id);
  piece.board = board;
  piece.width = width;
  piece.height = height;
  piece.on_hand = 1;
  piece.offcut = true;
  return piece;
}

// Which fallouts of a board are cut into blanks.
std::set<std::tuple<int, int, int>> cut_fallouts(const BoardPlan& board) {
  std::set<std::tuple<int, int, int>> cut;
  for (const PlannedSheet& sheet : board.sheets) {
    if (sheet.stock < 0) {
      cut.insert({sheet.parent.line, sheet.parent.copy, sheet.fallout.opening});
    }
  }
  return cut;
}

// Those of one window of an order's mats are alike and get one id.
void add_fallouts(const SheetPlan& plan, const KeepRule& keep, NewIds& ids,
                  std::vector<KeptOffcut>& kept) {
  for (std::size_t b = 0; b < plan.boards.size(); ++b) {
    const BoardPlan& board = plan.boards[b];
    const auto cut = cut_fallouts(board);
    std::vector<std::vector<int>> copies(board.lines.size());
    for (const PlannedSheet& sheet : board.sheets) {
      for (const BlankCopy& copy : sheet.blanks) {
        copies[static_cast<std::size_t>(copy.line)].push_back(copy.copy);
      }
    }
    for (std::size_t line = 0; line < board.lines.size(); ++line) {
      for (const Fallout& fallout : board.lines[line].fallouts) {
        if (!keep.keeps(fallout.width, fallout.height)) continue;
        const auto count = std::count_if(copies[line].begin(), copies[line].end(), [&](int copy) {
          return !cut.contains({static_cast<int>(line), copy, fallout.opening});
        });
        if (count == 0) continue;
        KeptOffcut offcut;
        offcut.piece = kept_piece(board.board, fallout.width, fallout.height, ids.next());
        offcut.piece.on_hand = static_cast<int>(count);
        offcut.board = static_cast<int>(b);
        offcut.line = static_cast<int>(line);
        offcut.opening = fallout.opening;
        kept.push_back(std::move(offcut));
      }
    }
  }
}

}  // namespace

std::vector<KeptOffcut> kept_offcuts(const SheetPlan& plan, const Stock& stock,
                                     const KeepRule& keep) {
  std::vector<KeptOffcut> kept;
  NewIds ids(stock);
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      for (const Leftover& leftover : leftovers_of(sheet, plan.limits.kerf, keep)) {
        if (!leftover.keep) continue;
        kept.push_back(
            {sheet.number, leftover.rect,
             kept_piece(board.board, leftover.rect.width(), leftover.rect.height(), ids.next())});
      }
    }
  }
  add_fallouts(plan, keep, ids, kept);
  return kept;
}

std::vector<Bought> bought_for(const SheetPlan& plan, const Stock& stock) {
  std::map<int, int> counts;
  for (const BoardPlan& board : plan.boards) {
    for (const PlannedSheet& sheet : board.sheets) {
      if (sheet.stock >= 0 && !stock.pieces[static_cast<std::size_t>(sheet.stock)].on_hand) {
        ++counts[sheet.stock];
      }
    }
  }
  std::vector<Bought> bought;
  for (const auto& [piece, count] : counts) {
    bought.push_back({stock.pieces[static_cast<std::size_t>(piece)].id, count});
  }
  return bought;
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
