#include "engine/sheets/report/report.h"

namespace mullion {
namespace {

double area(Length width, Length height) {
  return to_inches(width) * to_inches(height);
}

}  // namespace

BoardUse use_of(const BoardPlan& board, const Stock& stock, const SheetCutter& cutter) {
  BoardUse use;
  double cut = 0, made = 0;
  for (const PlannedSheet& sheet : board.sheets) {
    const bool fallout = sheet.stock < 0;
    const bool offcut = !fallout && stock.pieces[static_cast<std::size_t>(sheet.stock)].offcut;
    ++(fallout ? use.fallouts : offcut ? use.offcuts : use.sheets);
    if (!fallout) cut += area(sheet.width, sheet.height);
    for (const BlankCopy& copy : sheet.blanks) {
      const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
      if (!fallout) made += area(line.width, line.height);
      ++use.blanks;
    }
    const std::vector<NumberedCut> cuts = cuts_of(sheet, cutter);
    use.cuts += static_cast<int>(cuts.size());
    use.settings += settings_of(cuts);
  }
  if (cut > 0) use.used = made / cut;
  return use;
}

std::string source_of(const PlannedSheet& sheet, const BoardPlan& board, const Stock& stock) {
  if (sheet.stock >= 0) {
    const StockPiece& piece = stock.pieces[static_cast<std::size_t>(sheet.stock)];
    return (piece.offcut ? "off-cut " : "sheet ") + piece.id;
  }
  const BlankOrder& line = board.lines[static_cast<std::size_t>(sheet.parent.line)];
  return "fallout of " + line.order + ", " + line.layer + ", copy " +
         std::to_string(sheet.parent.copy) + ", opening " + std::to_string(sheet.fallout.opening);
}

}  // namespace mullion
