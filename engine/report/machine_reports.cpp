#include "engine/report/json.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

using report::document;
using report::Json;
using report::of;

Json of(const std::optional<StopScale>& stop, Unit unit) {
  if (!stop) return {};
  return {{"least", of(stop->least, unit)},
          {"most", of(stop->most, unit)},
          {"zero", of(stop->zero, unit)}};
}

Json guide_of(const CutterProfile& cutter, Unit unit) {
  if (!cutter.guide) return {};
  return {{"least", of(cutter.guide->least, unit)},
          {"most", of(cutter.guide->most, unit)},
          {"zero", of(cutter.guide->zero, unit)},
          {"board_over_bar", cutter.guide->board_over_bar}};
}

Json of(const HandlingTimes& times) {
  return {{"guide_move", times.guide_move},       {"stop_move", times.stop_move},
          {"quarter_turn", times.quarter_turn},   {"rechuck", times.rechuck},
          {"pencil_line", times.pencil_line},     {"by_eye", times.by_eye},
          {"freehand_line", times.freehand_line}, {"bevel_cut", times.bevel_cut},
          {"straight_cut", times.straight_cut},   {"curve", times.curve},
          {"tape_layer", times.tape_layer},       {"arm_stop_move", times.arm_stop_move},
          {"guide_stroke", times.guide_stroke},   {"gauge_piece", times.gauge_piece},
          {"gauge_change", times.gauge_change},   {"tape_template", times.tape_template}};
}

Json of(const CutterProfile& cutter) {
  const Unit unit = cutter.scale.unit;
  Json out = {{"id", cutter.id},
              {"name", cutter.name},
              {"unit", word_for(unit)},
              {"division", of(cutter.scale.increment, unit)},
              {"longest_cut", of(cutter.longest_cut, unit)},
              {"widest_board", of(cutter.widest_board, unit)},
              {"reach", of(cutter.reach, unit)},
              {"thickest_board", of(cutter.thickest_board, unit)},
              {"deepest_cut", of(cutter.deepest_cut, unit)},
              {"deepest_in_two", of(cutter.deepest_in_two, unit)},
              {"stroke", cutter.stroke == Stroke::pull ? "pull" : "push"},
              {"guide_side", cutter.side == GuideSide::left ? "left" : "right"},
              {"blade_tip", cutter.lean == BladeLean::to_guide ? "to guide" : "from guide"},
              {"guide", guide_of(cutter, unit)},
              {"near_stop", of(cutter.near_stop, unit)},
              {"far_stop", of(cutter.far_stop, unit)},
              {"arm_length", of(cutter.arm_length, unit)},
              {"arm_zero", of(cutter.arm_zero, unit)},
              {"mark_lead", of(cutter.mark_lead, unit)},
              {"start_lead", of(start_lead(cutter), unit)},
              {"start_extra", of(cutter.start_extra, unit)},
              {"line_from_rail", of(cutter.line_from_rail, unit)},
              {"prefers", cutter.prefers ? Json(word_of(*cutter.prefers)) : Json()},
              {"farther_first", cutter.farther_first},
              {"kerf", of(cutter.kerf, unit)},
              {"over_cuts", Json::array()},
              {"seconds", of(cutter.times)}};
  for (const OverCut& over : cutter.over_cuts) {
    out["over_cuts"].push_back(
        {{"thickness", of(over.thickness, unit)}, {"distance", of(over.distance, unit)}});
  }
  return out;
}

}  // namespace

std::string printer_json(const PrinterProfile& profile) {
  const Unit unit = profile.unit;
  Json out = document("printer");
  out["name"] = profile.name;
  out["unit"] = word_for(unit);
  out["across"] = of(profile.across, unit);
  out["down"] = of(profile.down, unit);
  const auto reading = [&](const CalibrationReading& measured) {
    return Json{{"across", of(measured.across, unit)},
                {"down", of(measured.down, unit)},
                {"falling", of(measured.falling, unit)},
                {"rising", of(measured.rising, unit)}};
  };
  out["paper"] = profile.paper;
  out["measured"] = Json::array();
  for (const CalibrationReading& measured : profile.measured) {
    out["measured"].push_back(reading(measured));
  }
  out["assembled"] = Json::array();
  for (const AssembledTemplate& assembled : profile.assembled) {
    Json one = reading(assembled.measured);
    one["width"] = of(assembled.width, unit);
    one["height"] = of(assembled.height, unit);
    one["turned"] = assembled.turned;
    out["assembled"].push_back(std::move(one));
  }
  out["scale_across"] = profile.correction.scale_x;
  out["scale_down"] = profile.correction.scale_y;
  out["skew"] = profile.correction.skew;
  return report::text_of(out);
}

std::string cutter_json(std::string_view verb, const CutterProfile& cutter) {
  Json out = document(verb);
  out["cutter"] = of(cutter);
  return report::text_of(out);
}

std::string test_cut_json(const CutterProfile& cutter, Length thickness) {
  const Unit unit = cutter.scale.unit;
  const TestCut test = test_cut(cutter, thickness);
  Json out = document("cutter check");
  out["test_cut"] = {
      {"scrap", of(test.scrap, unit)},         {"thickness", of(test.thickness, unit)},
      {"guide", of(test.guide, unit)},         {"near_stop", of(test.near_stop, unit)},
      {"far_stop", of(test.far_stop, unit)},   {"arm", of(test.arm, unit)},
      {"mark_past", of(test.mark_past, unit)}, {"start_mark_past", of(test.start_mark_past, unit)}};
  return report::text_of(out);
}

std::string corrections_json(const MeasuredUp& measured) {
  const Unit unit = measured.cutter.scale.unit;
  Json out = document("cutter check");
  out["corrections"] = Json::array();
  for (const auto& correction : measured.corrections) {
    out["corrections"].push_back({{"what", correction.what},
                                  {"was", of(correction.was, unit)},
                                  {"becomes", of(correction.becomes, unit)},
                                  {"reason", correction.reason}});
  }
  out["turn"] = measured.turn;
  out["cutter"] = of(measured.cutter);
  return report::text_of(out);
}

}  // namespace mullion
