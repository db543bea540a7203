#include "engine/sheets/report/report.h"

#include <cstdio>

#include "engine/cutting/sheet/scale_text.h"
#include "engine/sheets/stock/size_text.h"

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
      (fallout ? use.square_inches_saved : made) += area(line.width, line.height);
      if (fallout) ++use.blanks_of_fallouts;
      ++use.blanks;
    }
    const std::vector<NumberedCut> cuts = cuts_of(sheet, cutter);
    use.cuts += static_cast<int>(cuts.size());
    use.settings += settings_of(cuts);
  }
  if (cut > 0) use.used = made / cut;
  return use;
}

std::string setting_text(const NumberedCut& cut, const SheetCutter& cutter, const Scale& scale) {
  if (cut.marked) return size_text(cut.stop, scale) + " (mark)";
  const Length middle = cut.stop + half_rounded_down(cutter.limits.kerf);
  return scale_text(middle, cutter.stop_zero, cutter.stop_scale.value_or(scale)).all() +
         (cut.rest_at_stop ? " (rest)" : "");
}

std::string area_text(double square_inches, Unit unit) {
  constexpr double square_inches_per_foot = 144;
  constexpr double metres_per_inch = 0.0254;  // exactly (international inch, 1959)
  char text[40];
  if (unit == Unit::inch) {
    std::snprintf(text, sizeof text, "%.1f sq ft", square_inches / square_inches_per_foot);
  } else {
    std::snprintf(text, sizeof text, "%.2f m2", square_inches * metres_per_inch * metres_per_inch);
  }
  return text;
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
