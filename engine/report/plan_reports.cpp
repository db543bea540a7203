#include "engine/cuts/sheet/plan_json.h"
#include "engine/report/json.h"
#include "engine/sheets/inventory/ledger.h"
#include "engine/sheets/report/json.h"

namespace mullion {
namespace {

std::string plan_document(std::string_view verb, report::Json plan, const Outcome& outcome) {
  report::Json out = report::document(verb, outcome);
  out["plan"] = std::move(plan);
  return report::text_of(out);
}

}  // namespace

std::string cuts_json(const CuttingPlan& plan, const Outcome& outcome) {
  return plan_document("cuts", plan_json(plan), outcome);
}

std::string cuts_json(const CuttingRun& run, const Outcome& outcome) {
  return plan_document("cuts", run_json(run), outcome);
}

std::string sheets_json(const SheetReport& report, const Outcome& outcome) {
  return plan_document("sheets", sheets_json(report), outcome);
}

std::string rack_json(std::string_view verb, const Stock& stock,
                      const std::vector<LedgerLine>& acts, const Outcome& outcome) {
  report::Json out = report::document(verb, outcome);
  out["pieces"] = report::Json::array();
  for (const StockPiece& piece : stock.pieces) {
    out["pieces"].push_back(
        {{"id", piece.id},
         {"kind", piece.offcut ? "offcut" : "sheet"},
         {"board", piece.board.name},
         {"width", report::of(piece.width, stock.unit)},
         {"height", report::of(piece.height, stock.unit)},
         {"onHand", piece.on_hand ? report::Json(*piece.on_hand) : report::Json()}});
  }
  out["acts"] = report::Json::array();
  for (const LedgerLine& line : acts) {
    out["acts"].push_back(report::Json::parse(format_line(line)));
  }
  return report::text_of(out);
}

}  // namespace mullion
