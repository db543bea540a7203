#include <algorithm>
#include <cstdio>

#include "engine/cuts/sheet/run_text.h"
#include "engine/sheets/inventory/inventory.h"
#include "engine/sheets/report/report.h"
#include "engine/sheets/stock/size_text.h"

namespace mullion {
namespace {

std::string percent(double share) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f %%", 100 * share);
  return text;
}

std::string counted(int count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string blanks_text(const PlannedSheet& sheet, const BoardPlan& board, const Scale& scale) {
  std::string text;
  std::vector<BlankCopy> copies = sheet.blanks;
  std::stable_sort(copies.begin(), copies.end(), [](const BlankCopy& a, const BlankCopy& b) {
    return std::pair(a.line, a.copy) < std::pair(b.line, b.copy);
  });
  for (std::size_t i = 0; i < copies.size();) {
    const BlankOrder& line = board.lines[static_cast<std::size_t>(copies[i].line)];
    std::string numbers;
    int count = 0;
    for (const int present = copies[i].line; i < copies.size() && copies[i].line == present; ++i) {
      numbers += (numbers.empty() ? "" : ", ") + std::to_string(copies[i].copy);
      ++count;
    }
    text += "      " + std::to_string(count) + " of " + size_text(line.width, line.height, scale) +
            ": " + line.order + ", " + line.layer + ", " + (count == 1 ? "copy " : "copies ") +
            numbers + "\n";
  }
  return text;
}

std::string bound_text(std::int64_t cost, std::int64_t bound, const Stock& stock) {
  if (cost <= bound) return "no plan costs less";
  return "no plan costs less than " + cost_text(bound, stock) + "; this is " +
         percent(static_cast<double>(cost - bound) /
                 static_cast<double>(std::max<std::int64_t>(bound, 1))) +
         " above";
}

std::string saving_text(const BoardPlan& board, const BoardUse& use, const SheetReport& report) {
  if (use.blanks_of_fallouts == 0) return "";
  std::string text = "  fallouts give " + counted(use.blanks_of_fallouts, "blank", "blanks") +
                     ", " + area_text(use.square_inches_saved, report.plan.scale.unit) +
                     " of board";
  if (board.cost_without_fallouts) {
    text += ", and save " + cost_text(*board.cost_without_fallouts - board.cost, report.stock);
  }
  return text + "\n";
}

std::string missing_text(const BoardPlan& board, const Scale& scale) {
  std::string text;
  for (const BlankCopy& copy : board.missing) {
    const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
    text += "  missing: " + line.order + ", " + line.layer + ", copy " + std::to_string(copy.copy) +
            ", " + size_text(line.width, line.height, scale) + "\n";
  }
  return text;
}

std::string sheet_text(const PlannedSheet& sheet, const BoardPlan& board,
                       const SheetReport& report) {
  const std::vector<NumberedCut> cuts = cuts_of(sheet, report.cutter);
  const Scale& scale = report.plan.scale;
  return "  Sheet " + std::to_string(sheet.number) + ", " + source_of(sheet, board, report.stock) +
         ", " + size_text(sheet.width, sheet.height, scale) + ": " +
         counted(static_cast<int>(cuts.size()), "cut", "cuts") + " at " +
         counted(settings_of(cuts), "setting", "settings") + "\n" +
         blanks_text(sheet, board, scale);
}

// Which orders are cut alike; the run sheet says how.
std::string work_text(const std::vector<WorkPart>& work, const Scale& scale) {
  std::string text = "\nMats that run together on the same stops\n";
  for (const WorkPart& part : work) {
    if (work.size() > 1) text += "  after sheets " + numbers_text(part.sheets) + "\n";
    for (const RunKind& kind : part.run.kinds) {
      text += "  kind " + std::to_string(kind.number) + ", " +
              size_text(kind.plan.outer.width(), kind.plan.outer.height(), scale) + ": " +
              kind_text(kind, {}) + "\n";
    }
  }
  return text;
}

std::string board_text(const BoardPlan& board, const SheetReport& report) {
  const Scale& scale = report.plan.scale;
  const BoardUse use = use_of(board, report.stock, report.cutter);
  std::string text =
      describe(board.board, scale) + "\n  " + counted(use.blanks, "blank", "blanks") + " from " +
      counted(use.sheets, "sheet", "sheets") + ", " + counted(use.offcuts, "off-cut", "off-cuts") +
      " and " + counted(use.fallouts, "fallout", "fallouts") + "; " + percent(use.used) +
      " of the board used\n  " + counted(use.cuts, "cut", "cuts") + " at " +
      counted(use.settings, "setting", "settings") + "\n  cost " +
      cost_text(board.cost, report.stock);
  text += (board.missing.empty() ? "; " + bound_text(board.cost, board.bound, report.stock) : "") +
          "\n" + saving_text(board, use, report) + missing_text(board, scale);
  for (const PlannedSheet& sheet : board.sheets) text += sheet_text(sheet, board, report);
  return text;
}

std::string pull_section(const SheetReport& report) {
  const PullList list = pull_list(report.plan, report.stock, report.rest);
  const Scale& scale = report.plan.scale;
  std::string pulled, bought, costs;
  for (const PullLine& line : list.lines) {
    if (line.pull > 0) pulled += "  " + pull_text(line, scale) + "\n";
  }
  for (const PullLine& line : list.purchases()) {
    bought += "  " + purchase_text(line, report.stock, scale) + "\n";
  }
  for (const OrderShare& order : list.orders) {
    costs += "  " + order.order + ": " + cost_text(order.cost, report.stock) + "\n";
  }
  std::string text;
  if (!pulled.empty()) text += "Take from the rack\n" + pulled + "\n";
  if (!bought.empty()) text += "Buy\n" + bought + "\n";
  if (list.orders.size() > 1) text += "Board by order\n" + costs + "\n";
  return text;
}

}  // namespace

std::string cost_text(std::int64_t cost, const Stock& stock, const Locale& locale) {
  if (stock.priced_by_area) {
    return locale.say(stock.unit == Unit::inch ? mark("%1 sq in") : mark("%1 sq cm"), cost);
  }
  return locale.number(format_price(cost, stock.currency));
}

std::string text_of(const SheetReport& report) {
  std::string text;
  bool complete = true;
  for (const BoardPlan& board : report.plan.boards) {
    text += board_text(board, report) + "\n";
    complete = complete && board.missing.empty();
  }
  const std::vector<KeptOffcut> kept = kept_offcuts(report.plan, report.stock, report.keep);
  if (!kept.empty()) text += "Off-cuts to keep\n";
  for (const KeptOffcut& offcut : kept) {
    text += "  " + offcut.piece.id + ", " + offcut.piece.board.name + ", " +
            size_text(offcut.piece.width, offcut.piece.height, report.plan.scale) + ", " +
            origin_of(offcut, report.plan) + "\n";
  }
  if (!kept.empty()) text += "\n";
  text += pull_section(report);
  for (const LeftOut& left : report.plan.left_out) {
    text += "Not made: " + left_out_text(left, report.plan.scale) + "\n";
  }
  if (!report.plan.left_out.empty()) text += "\n";
  text += "In all: " + cost_text(report.plan.cost(), report.stock);
  if (complete) {
    text += "; " + bound_text(report.plan.cost(), report.plan.bound(), report.stock);
  }
  text += "\n";
  return report.work ? text + work_text(*report.work, report.plan.scale) : text;
}

}  // namespace mullion
