#include "engine/cuts/sheet/run_json.h"

#include "engine/cuts/sheet/plan_json.h"
#include "engine/cuts/sheet/run_text.h"

namespace mullion {
namespace {

using Json = nlohmann::ordered_json;

Json kind_json(const RunKind& kind) {
  Json orders = Json::array();
  for (const RunShare& share : kind.shares) {
    orders.push_back(
        {{"order", share.order}, {"title", share.title}, {"quantity", share.quantity}});
    if (!share.copies.empty()) orders.back()["copies"] = share.copies;
  }
  return {{"kind", kind.number}, {"orders", orders}, {"plan", plan_json(kind.plan)}};
}

Json blank_json(const CuttingRun& run, const RunBlank& blank) {
  const Unit unit = run.cutter.scale.unit;
  Json shares = Json::array();
  int copies = 0;
  for (const RunBlank::Share& share : blank.shares) {
    const RunKind& kind = run.kinds[static_cast<std::size_t>(share.kind)];
    const int own = kind.plan.quantity * static_cast<int>(share.layers.size());
    copies += own;
    shares.push_back({{"kind", kind.number}, {"layers", share.layers}, {"copies", own}});
  }
  return {{"by", blank.by_stop ? "arm stop" : "pencil line"},
          {"strip", blank.strip},
          {"size", format_exact(blank.size, unit)},
          {"cut_length", format_exact(blank.length, unit)},
          {"copies", copies},
          {"for", shares}};
}

Json step_json(const CuttingRun& run, const RunStep& step) {
  Json out = {{"step", step.number}};
  out.update(settings_json(run.cutter, step.settings));
  out["moves"] = Json::array();
  if (step.spacers_change) out["moves"].push_back("spacers");
  if (step.guide_moves) out["moves"].push_back("guide");
  if (step.near_stop_moves) out["moves"].push_back("near stop");
  if (step.far_stop_moves) out["moves"].push_back("far stop");
  out["cut"] = Json::array();
  for (const RunWork& work : step.work) {
    const Stage& stage = stage_of(run, work);
    Json set_up;
    if (work.set_up >= 0) set_up = stage.set_ups[static_cast<std::size_t>(work.set_up)].number;
    out["cut"].push_back({{"kind", kind_of(run, work).number},
                          {"copies", kind_of(run, work).plan.quantity},
                          {"stage", work.stage + 1},
                          {"layer", stage.layer},
                          {"set_up", set_up}});
  }
  return out;
}

}  // namespace

Json run_json(const CuttingRun& run) {
  Json out = {{"version", 1},
              {"cutter", run.cutter.id},
              {"mats", mats_in(run)},
              {"order_of_set_ups", run.mixed ? "mixed" : "kind after kind"},
              {"seconds", run.seconds},
              {"seconds_one_by_one", run.alone},
              {"seconds_at_least", run.bound},
              {"kinds", Json::array()},
              {"blanks", Json::array()},
              {"steps", Json::array()},
              {"cautions", cautions(run, {})}};
  for (const RunKind& kind : run.kinds) out["kinds"].push_back(kind_json(kind));
  for (const RunBlank& blank : run.blanks) out["blanks"].push_back(blank_json(run, blank));
  for (const RunStep& step : run.steps) out["steps"].push_back(step_json(run, step));
  return out;
}

std::string run_to_json(const CuttingRun& run) {
  return run_json(run).dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace mullion
