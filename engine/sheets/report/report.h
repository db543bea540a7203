#pragma once

// The sheet plan in words, as text for people and JSON for programs.
//
// Settings are what the scale of the cutter's stop shows, in its divisions; areas are in square
// inches until they are printed; costs in hundredths of the stock's currency. A report keeps
// references: the plan and what it was made from must outlive it.

#include <string>

#include "engine/sheets/batch/work_order.h"
#include "engine/sheets/inventory/take.h"
#include "engine/sheets/pull/pull_list.h"

namespace mullion {

struct SheetReport {
  const SheetPlan& plan;
  const Stock& stock;
  const SheetCutter& cutter;
  const KeepRule& keep;
  const std::vector<WorkPart>* work = nullptr;  // where it is known
  const SheetPlan* rest = nullptr;  // of what the plan leaves out (plan_missing), where it does
};

struct BoardUse {
  int sheets = 0, offcuts = 0, fallouts = 0;  // that are cut
  int blanks = 0;
  int blanks_of_fallouts = 0;      // of those
  double used = 0;                 // part of what is cut from stock that becomes blanks, 0 .. 1
  double square_inches_saved = 0;  // of blanks that are cut from fallouts
  int cuts = 0, settings = 0;
};

BoardUse use_of(const BoardPlan& board, const Stock& stock, const SheetCutter& cutter);

// "sheet oat-standard", "off-cut c-1", "fallout of A-1, Top mat, copy 2, opening 1".
std::string source_of(const PlannedSheet& sheet, const BoardPlan& board, const Stock& stock,
                      const Locale& locale = {});

// "order A-2: 2 of 5 mats (from copy 4 on), short of Oat, #f2eee3, 1/16 in".
std::string left_out_text(const LeftOut& left, const Scale& scale, const Locale& locale = {});

// "from sheet 2", "fallout of A-1, Top mat, opening 1"; "3 fallouts of ..." where there are more.
std::string origin_of(const KeptOffcut& offcut, const SheetPlan& plan, const Locale& locale = {});

// What to take from the rack and to buy: "2 of oat-standard, 32 x 40 in" and "1 pack of 10 of ...".
std::string pull_text(const PullLine& line, const Scale& scale, const Locale& locale = {});
std::string purchase_text(const PullLine& line, const Stock& stock, const Scale& scale,
                          const Locale& locale = {});

// What the scale of the stop shows for a cut, as "16 in", "16 1/16 in + 0.4 mm (rest)"; where the
// cut is marked by hand, the length to mark.
std::string setting_text(const NumberedCut& cut, const SheetCutter& cutter, const Scale& scale,
                         const Locale& locale = {});

// "1.2 sq ft" of a plan in inches, else "0.11 m2": for people, rounded.
std::string area_text(double square_inches, Unit unit, const Locale& locale = {});

// "12.50 EUR"; an area where the stock has no prices.
std::string cost_text(std::int64_t cost, const Stock& stock, const Locale& locale = {});

std::string text_of(const SheetReport& report);

// Lengths in exact ticks of 1/40640 in and as text in the plan's scale. The order of work is that
// of engine/sheets/batch/work_json.h.
std::string json_of(const SheetReport& report);

}  // namespace mullion
