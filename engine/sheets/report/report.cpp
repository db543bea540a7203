#include "engine/sheets/report/report.h"

#include <cstdio>

#include "engine/cuts/sheet/scale_text.h"
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

std::string left_out_text(const LeftOut& left, const Scale& scale, const Locale& locale) {
  std::string boards;
  for (const Board& board : left.short_of) {
    boards += (boards.empty() ? "" : "; ") + describe(board, scale, locale);
  }
  if (left.ordered == 1) return locale.say("order %1, short of %2", left.order, boards);
  return left.mats == left.ordered
             ? locale.say("order %1: all %2 mats, short of %3", left.order, left.ordered, boards)
             : locale.say("order %1: %2 of %3 mats (from copy %4 on), short of %5", left.order,
                          left.mats, left.ordered, left.first_copy(), boards);
}

std::string origin_of(const KeptOffcut& offcut, const SheetPlan& plan, const Locale& locale) {
  if (offcut.sheet > 0) return locale.say("from sheet %1", offcut.sheet);
  const BoardPlan& board = plan.boards[static_cast<std::size_t>(offcut.board)];
  const BlankOrder& line = board.lines[static_cast<std::size_t>(offcut.line)];
  const int count = offcut.piece.on_hand.value_or(1);
  return count == 1 ? locale.say("fallout of %1, %2, opening %3, trimmed square", line.order,
                                 line.layer, offcut.opening)
                    : locale.say("%1 fallouts of %2, %3, opening %4, trimmed square", count,
                                 line.order, line.layer, offcut.opening);
}

std::string pull_text(const PullLine& line, const Scale& scale, const Locale& locale) {
  return locale.say("%1 of %2, %3, %4", line.pull, line.piece->id, line.piece->board.name,
                    size_text(line.piece->width, line.piece->height, scale, locale));
}

std::string purchase_text(const PullLine& line, const Stock& stock, const Scale& scale,
                          const Locale& locale) {
  const StockPiece& piece = *line.piece;
  const std::string size = size_text(piece.width, piece.height, scale, locale);
  const std::string what = locale.say("%1, %2, %3", piece.id, piece.board.name, size);
  std::string text =
      piece.pack == 1 ? locale.say("%1 of %2, %3, %4", line.buy, piece.id, piece.board.name, size)
                      : locale.say("%1 in packs of %2 (%3 needed) of %4", line.packs, piece.pack,
                                   line.buy, what);
  if (!stock.priced_by_area && line.price() > 0) {
    text = locale.say("%1: %2", text, cost_text(line.price(), stock, locale));
  }
  return piece.supplier.empty() ? text : locale.say("%1, from %2", text, piece.supplier);
}

std::string setting_text(const NumberedCut& cut, const SheetCutter& cutter, const Scale& scale,
                         const Locale& locale) {
  if (cut.marked && cut.bevel && cut.stop == Length()) return locale.say("beside the blank (mark)");
  if (cut.marked) return locale.say("%1 (mark)", size_text(cut.stop, scale, locale));
  const Length middle = cut.stop + half_rounded_down(cutter.limits.kerf);
  const std::string shows =
      scale_text(middle, cutter.stop_zero, cutter.stop_scale.value_or(scale), locale).shows;
  return cut.rest_at_stop ? locale.say("%1 (rest)", shows) : shows;
}

std::string area_text(double square_inches, Unit unit, const Locale& locale) {
  constexpr double square_inches_per_foot = 144;
  constexpr double metres_per_inch = 0.0254;  // exactly (international inch, 1959)
  char text[40];
  if (unit == Unit::inch) {
    std::snprintf(text, sizeof text, "%.1f", square_inches / square_inches_per_foot);
  } else {
    std::snprintf(text, sizeof text, "%.2f", square_inches * metres_per_inch * metres_per_inch);
  }
  return locale.say(unit == Unit::inch ? mark("%1 sq ft") : mark("%1 m2"), locale.number(text));
}

std::string source_of(const PlannedSheet& sheet, const BoardPlan& board, const Stock& stock,
                      const Locale& locale) {
  if (sheet.stock >= 0) {
    const StockPiece& piece = stock.pieces[static_cast<std::size_t>(sheet.stock)];
    return locale.say(piece.offcut ? mark("off-cut %1") : mark("sheet %1"), piece.id);
  }
  const BlankOrder& line = board.lines[static_cast<std::size_t>(sheet.parent.line)];
  return locale.say("fallout of %1, %2, copy %3, opening %4", line.order, line.layer,
                    sheet.parent.copy, sheet.fallout.opening);
}

}  // namespace mullion
