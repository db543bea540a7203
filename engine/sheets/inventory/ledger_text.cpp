#include "engine/sheets/inventory/ledger_text.h"

#include <algorithm>

#include "engine/sheets/stock/size_text.h"

namespace mullion {
namespace {

std::string change_text(const PieceChange& change, const Scale& scale) {
  const StockPiece& piece = change.is ? *change.is : *change.was;
  const std::string size = size_text(piece.width, piece.height, scale);
  const auto count = [](const std::optional<StockPiece>& one) {
    return one->on_hand ? std::to_string(*one->on_hand) : "not counted";
  };
  if (!change.was) return piece.id + " added, " + count(change.is) + " of " + size;
  if (!change.is) return piece.id + " gone, " + count(change.was) + " of " + size;
  if (change.was->on_hand != change.is->on_hand) {
    return piece.id + " " + count(change.was) + " to " + count(change.is);
  }
  return piece.id + " changed";
}

Scale usual_scale(Unit unit) {
  return {unit, unit == Unit::inch ? sixty_fourths(1) : Length::from_ticks(ticks_per_mm / 10)};
}

}  // namespace

std::string line_text(const LedgerLine& line, Unit unit) {
  std::string time = line.time;
  std::replace(time.begin(), time.end(), 'T', ' ');
  if (time.ends_with('Z')) time.replace(time.size() - 1, 1, " UTC");
  std::string text = std::to_string(line.number) + ", " + time + ", " + word_for(line.act);
  if (line.undoes > 0) text += " line " + std::to_string(line.undoes);
  std::string orders;
  for (const CutMats& cut : line.orders) {
    orders += (orders.empty() ? ": " : ", ") + cut.order + " (" + std::to_string(cut.mats) +
              " of " + std::to_string(cut.of) + ")";
  }
  text += orders;
  if (line.act == Act::opened) {
    return text + ": " + std::to_string(line.changes.size()) + " pieces";
  }
  std::string changes;
  for (const Bought& bought : line.bought) {
    changes += (changes.empty() ? "; " : ", ") + std::to_string(bought.sheets) + " of " +
               bought.id + " bought";
  }
  for (const PieceChange& change : line.changes) {
    changes += (changes.empty() ? "; " : ", ") + change_text(change, usual_scale(unit));
  }
  return text + changes;
}

std::string ledger_text(const Ledger& ledger) {
  std::string text;
  for (const LedgerLine& line : ledger.lines) text += line_text(line, ledger.head.unit) + "\n";
  return text;
}

std::string rack_text(const Stock& stock) {
  const Scale scale = usual_scale(stock.unit);
  std::vector<Board> boards;
  for (const StockPiece& piece : stock.pieces) {
    if (piece.on_hand.value_or(0) == 0) continue;
    if (std::find(boards.begin(), boards.end(), piece.board) == boards.end()) {
      boards.push_back(piece.board);
    }
  }
  std::string text;
  for (const Board& board : boards) {
    text += describe(board, scale) + "\n";
    for (const StockPiece& piece : stock.pieces) {
      if (piece.board != board || piece.on_hand.value_or(0) == 0) continue;
      text += "  " + std::to_string(*piece.on_hand) + " of " + piece.id + ", " +
              size_text(piece.width, piece.height, scale) + (piece.offcut ? ", off-cut" : "") +
              "\n";
    }
  }
  return text.empty() ? "Nothing is on the rack.\n" : text;
}

}  // namespace mullion
