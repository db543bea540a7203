#include "engine/cuts/sheet/plan_json.h"
#include "engine/report/json.h"
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

}  // namespace mullion
