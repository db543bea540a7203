#include "engine/report/json.h"

namespace mullion {
namespace {

using price::Currency;
using price::Estimate;
using price::Line;
using price::Money;
using report::Json;

Json of(Money money, const Currency& currency) {
  return {{"text", price::format(money, currency)}, {"units", money.units}};
}

const char* name_of(Line::Kind kind) {
  switch (kind) {
    case Line::Kind::item:
      return "item";
    case Line::Kind::adjustment:
      return "adjustment";
    case Line::Kind::sum:
      return "sum";
    case Line::Kind::total:
      return "total";
  }
  return "item";
}

}  // namespace

std::string estimate_json(const Estimate& estimate, bool with_costs) {
  const Currency& currency = estimate.currency;
  Json out = report::document("estimate");
  out["currency"] = {{"code", currency.code}, {"decimals", currency.decimals}};
  out["lines"] = Json::array();
  for (const Line& line : estimate.lines) {
    Json json = {
        {"kind", name_of(line.kind)}, {"what", line.what}, {"price", of(line.price, currency)}};
    if (with_costs) {
      json["how"] = line.how;
      json["cost"] = line.cost ? of(*line.cost, currency) : Json();
    }
    out["lines"].push_back(std::move(json));
  }
  out["total"] = of(estimate.total, currency);
  if (with_costs) {
    out["cost"] = of(estimate.cost, currency);
    out["cost_known"] = estimate.cost_known;
  }
  return report::text_of(out);
}

}  // namespace mullion
