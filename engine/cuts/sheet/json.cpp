#include "engine/cuts/sheet/json.h"

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/plan_json.h"
#include "engine/cuts/sheet/scale_text.h"

namespace mullion {
namespace {

using Json = nlohmann::ordered_json;

Json setting_json(const CutterProfile& cutter, Length true_distance, Length zero) {
  const ScaleText text = scale_text(true_distance, zero, cutter.scale);
  return {{"shows", text.shows}, {"rounded_by", format_exact(text.rounded_by, Unit::millimetre)}};
}

void add_guide(const CutterProfile& cutter, const std::optional<Length>& guide,
               const std::optional<Block>& block, Json& out) {
  out["guide"] = guide ? setting_json(cutter, *guide, cutter.guide->zero) : Json();
  out["block"] = block ? Json{{"width", format_exact(block->width, cutter.scale.unit)},
                              {"place", block->outside ? "outside the guide" : "inside the guide"}}
                       : Json();
}

class PlanWriter {
 public:
  explicit PlanWriter(const CuttingPlan& plan) : plan_(plan) {}

  Json write() const {
    Json ways = Json::array();
    for (const WayTime& way : plan_.ways) {
      ways.push_back({{"way", name_of(way.way)},
                      {"seconds", way.seconds},
                      {"likely_error", format_exact(way.error, Unit::millimetre)},
                      {"cost", way.cost}});
    }
    Json out = {{"version", 1},
                {"reference", plan_.reference},
                {"title", plan_.title},
                {"cutter", cutter()},
                {"quantity", plan_.quantity},
                {"width", exact(plan_.outer.width())},
                {"height", exact(plan_.outer.height())},
                {"way", name_of(plan_.way)},
                {"ways", ways},
                {"under_mats", plan_.stacked ? "stacked" : "separate"},
                {"seconds", plan_.seconds},
                {"seconds_at_least", plan_.bound},
                {"blanks", blanks()},
                {"gauges", Json::array()},
                {"stages", Json::array()},
                {"notes", Json::array()},
                {"cautions", Json::array()}};
    for (const Length gauge : plan_.gauges) out["gauges"].push_back(exact(gauge));
    for (const Stage& stage : plan_.stages) out["stages"].push_back(stage_json(stage));
    for (const PlanNote& note : plan_.notes) out["notes"].push_back(note_json(note));
    for (const std::string& caution : cautions({plan_, {}})) out["cautions"].push_back(caution);
    return out;
  }

 private:
  std::string exact(Length length) const { return format_exact(length, plan_.cutter.scale.unit); }

  Json note_json(const PlanNote& note) const {
    Json out = {{"code", code_of(note)}};
    if (const auto* uneven = std::get_if<UnevenShift>(&note)) out["layer"] = uneven->layer;
    if (const auto* beyond = std::get_if<BeyondGuide>(&note)) {
      out["lines"] = beyond->lines;
      out["reach"] = exact(beyond->reach);
    }
    if (const auto* blank = std::get_if<LongBlank>(&note)) out["side"] = exact(blank->side);
    if (const auto* rounded = std::get_if<RoundedSettings>(&note)) {
      out["to"] = exact(rounded->step);
      out["by_at_most"] = format_exact(rounded->most, Unit::millimetre);
    }
    if (const auto* reach = std::get_if<ReachUnknown>(&note)) {
      out["from_arm"] = exact(reach->farthest);
    }
    if (const auto* depth = std::get_if<DepthUnknown>(&note)) {
      out["layer"] = depth->layer;
      out["thickness"] = exact(depth->thickness);
    }
    if (const auto* rail = std::get_if<RailLineUnknown>(&note)) out["lines"] = rail->lines;
    if (const auto* passes = std::get_if<TwoPasses>(&note)) out["layer"] = passes->layer;
    return out;
  }

  Json setting(Length true_distance, Length zero) const {
    return setting_json(plan_.cutter, true_distance, zero);
  }
  void guide_json(const std::optional<Length>& guide, const std::optional<Block>& block,
                  Json& out) const {
    add_guide(plan_.cutter, guide, block, out);
  }

  Json cutter() const {
    const CutterProfile& c = plan_.cutter;
    return {{"id", c.id},
            {"name", c.name},
            {"guide_side", c.side == GuideSide::left ? "left" : "right"},
            {"blade_tip", c.lean == BladeLean::to_guide ? "to guide" : "from guide"},
            {"division", exact(c.scale.increment)},
            {"stroke", c.stroke == Stroke::pull ? "pull" : "push"},
            {"mark_lead", exact(c.mark_lead)},
            {"start_lead", exact(start_lead(c))},
            {"line_from_rail", c.line_from_rail ? Json(exact(*c.line_from_rail)) : Json()}};
  }

  Json blanks() const {
    Json out = Json::array();
    for (const StraightCut& side : plan_.blanks) {
      const Length kerf = half_rounded_down(plan_.cutter.kerf);
      out.push_back(
          {{"layers", side.layers},
           {"strip", side.strip},
           {"by", side.by_stop ? "arm stop" : "pencil line"},
           {"size", exact(side.size)},
           {"arm_stop", side.by_stop ? setting(side.size + kerf, plan_.cutter.arm_zero) : Json()},
           {"cut_length", exact(side.length)},
           {"backing_sheet", false},
           {"copies", plan_.quantity}});
    }
    return out;
  }

  Json stage_json(const Stage& stage) const {
    Json out = {
        {"kind", kind_of(stage)},
        {"layer", stage.layer},
        {"name", stage.name},
        {"board", stage.board},
        {"thickness", exact(stage.thickness)},
        {"bevel_run", exact(stage.run)},
        {"taped_behind", stage.taped},
        {"blank", {{"width", exact(stage.blank.width())}, {"height", exact(stage.blank.height())}}},
        {"edges_of", stage.taped ? "top mat" : "its blank"},
        {"same_order_as_above", stage.same_order},
        {"change_from_above", Json()},
        {"passes", stage.passes},
        {"seconds", stage.seconds},
        {"pencil_lines", Json::array()},
        {"marking", Json::array()},
        {"set_ups", Json::array()},
        {"freehand", Json::array()},
        {"curves", Json::array()},
        {"trims", Json::array()},
        {"strips", Json::array()},
        {"squares", Json::array()},
        {"checks", Json::array()}};
    if (stage.shift) {
      out["change_from_above"] = {{"guide_opened_by", exact(stage.shift->guide)},
                                  {"stops_closed_by", exact(stage.shift->stops)}};
    }
    for (const PencilLine& line : stage.pencil_lines) out["pencil_lines"].push_back(pencil(line));
    for (const MarkSetUp& set_up : stage.marking) out["marking"].push_back(marking(set_up));
    for (const SetUp& set_up : stage.set_ups) out["set_ups"].push_back(set_up_json(set_up));
    for (const SkewCut& cut : stage.skew_cuts) out["freehand"].push_back(skew(cut));
    for (const CurveCut& curve : stage.curves) out["curves"].push_back(curve_json(curve));
    for (const GrooveTrim& trim : stage.trims) out["trims"].push_back(trim_json(trim));
    for (const SpacerStrip& strip : stage.strips) {
      out["strips"].push_back({{"edge", std::string(1, letter(strip.edge))},
                               {"width", exact(strip.width)},
                               {"length", exact(strip.length)}});
    }
    for (const SpacerWindow& window : stage.squares) {
      out["squares"].push_back({{"openings", window.openings},
                                {"from_A", exact(window.back.top - stage.blank.top)},
                                {"from_B", exact(window.back.left - stage.blank.left)},
                                {"from_C", exact(stage.blank.bottom - window.back.bottom)},
                                {"from_D", exact(stage.blank.right - window.back.right)}});
    }
    for (const Check& check : stage.checks) out["checks"].push_back(check_json(check));
    return out;
  }

  static const char* kind_of(const Stage& stage) {
    constexpr const char* kinds[] = {"groove", "layer", "spacer"};
    return kinds[static_cast<int>(stage.kind)];
  }

  Json lying(BoardEdge at_guide, bool laid, int turns) const {
    const std::string away(1, letter(far_edge(at_guide, plan_.cutter.side)));
    return {{"edge_at_guide", std::string(1, letter(at_guide))},
            {"edge_at_arm", near_letter(at_guide)},
            {"edge_away", away},
            {"laid_anew", laid},
            {"quarter_turns_clockwise", laid ? Json() : Json(turns)}};
  }

  Json marking(const MarkSetUp& set_up) const {
    Json out;
    guide_json(set_up.setting.guide, set_up.setting.block, out);
    out["by"] = plan_.cutter.line_from_rail ? "pencil along the rail's edge" : "blade's point";
    out["lines"] = Json::array();
    for (const MarkPlacement& placement : set_up.placements) {
      Json line = lying(placement.edge, placement.laid, placement.turns);
      line["number"] = placement.line;
      out["lines"].push_back(line);
    }
    return out;
  }

  Json check_json(const Check& check) const {
    constexpr const char* kinds[] = {"line", "fallout", "opening", "reveal"};
    Json out = {{"kind", kinds[static_cast<int>(check.kind)]}};
    if (check.after_cut > 0) out["after_cut"] = check.after_cut;
    if (!check.openings.empty()) out["openings"] = check.openings;
    if (check.kind == Check::Kind::line || check.kind == Check::Kind::reveal) {
      out["edge"] = std::string(1, letter(check.edge));
      out["distance"] = exact(check.distance);
    } else {
      out["width"] = exact(check.width);
      out["height"] = exact(check.height);
    }
    return out;
  }

  Json pencil(const PencilLine& line) const {
    return {{"number", line.number},
            {"drawn_by", plan_.way == Way::template_taped ? "template"
                         : line.by_guide                  ? "guide"
                                                          : "rule"},
            {"edge", std::string(1, letter(line.edge))},
            {"distance", exact(line.distance)},
            {"openings", line.openings}};
  }

  Json set_up_json(const SetUp& set_up) const {
    Json out = {{"number", set_up.number}};
    out.update(settings_json(plan_.cutter, set_up.settings));
    out["placements"] = Json::array();
    for (const Placement& placement : set_up.placements) {
      Json cuts = Json::array();
      for (const BevelCut& cut : placement.cuts) cuts.push_back(cut_json(cut));
      Json lies = lying(placement.edge, placement.laid, placement.turns);
      lies["face"] = "down";
      lies["cuts"] = cuts;
      out["placements"].push_back(lies);
    }
    return out;
  }

  std::string near_letter(BoardEdge edge) const {
    return std::string(1, letter(near_edge(edge, plan_.cutter.side)));
  }

  Json cut_json(const BevelCut& cut) const {
    Json out = {{"number", cut.number},
                {"openings", cut.openings},
                {"distance", exact(cut.distance)},
                {"on_pencil_line", cut.pencil > 0 ? Json(cut.pencil) : Json()},
                {"line_up_by", cut.pencil == 0               ? Json()
                               : plan_.cutter.line_from_rail ? Json("rail's edge")
                                                             : Json("blade's point")},
                {"start", end_json(cut.start)},
                {"end", end_json(cut.end)}};
    if (cut.instead) {
      Json instead;
      guide_json(cut.instead->guide, cut.instead->block, instead);
      out["instead"] = instead;
    }
    return out;
  }

  Json end_json(const CutEnd& end) const {
    Json out = {{"line_from_arm", exact(end.line)}, {"over_cut", exact(end.over_cut)}};
    if (end.by == EndBy::stop) {
      out["by"] = "stop";
    } else {
      out["by"] = end.by == EndBy::pencil ? "pencil line" : "cut";
      out["number"] = end.reference;
      out["mark_past_line"] = exact(end.past);
    }
    return out;
  }

  Json point(const Point& p) const { return {{"from_A", exact(p.y)}, {"from_B", exact(p.x)}}; }

  Json skew(const SkewCut& cut) const {
    return {{"number", cut.number},
            {"openings", cut.openings},
            {"from", point(cut.from)},
            {"to", point(cut.to)},
            {"over_cut", {exact(cut.from_over_cut), exact(cut.to_over_cut)}},
            {"mark_past_line", {exact(cut.from_past), exact(cut.to_past)}}};
  }

  Json axes(const Rect& box) const {
    return {{"width", exact(box.width())},
            {"height", exact(box.height())},
            {"half_width", exact_half(box.width())},
            {"half_height", exact_half(box.height())}};
  }
  // A half of an odd number of ticks has no exact text in ticks; it is said in whole ones.
  std::string exact_half(Length length) const { return exact(half_rounded_down(length)); }

  Json curve_json(const CurveCut& curve) const {
    const Rect& back = curve.back;
    Json out = {{"kind", curve.kind == CurveKind::oval ? "oval cutter" : "template"},
                {"openings", curve.openings},
                {"centre",
                 {{"from_A", exact_half(back.top + back.bottom)},
                  {"from_B", exact_half(back.left + back.right)}}},
                {"back", axes(curve.back)},
                {"face", axes(curve.face)}};
    if (curve.kind == CurveKind::oval) {
      out["off_template_by_at_most"] = exact(curve.off);
      return out;
    }
    out["direction"] = "clockwise as seen from the front";
    out["lines"] = Json::array();
    for (const CurveLine& line : curve.lines) out["lines"].push_back(template_json(line));
    return out;
  }

  // Straight parts and cubic Bezier curves.
  Json template_json(const CurveLine& line) const {
    Json parts = Json::array();
    for (std::size_t i = 0; i < line.line.segments.size(); ++i) {
      const Segment& segment = line.line.segments[i];
      Json part;
      if (segment.curved) {
        part["controls"] = {point(segment.control1), point(segment.control2)};
      }
      part["to"] = point(segment.to);
      part["over_cut"] = exact(line.over_cuts[i + 1]);
      parts.push_back(part);
    }
    return {{"closed", line.closed},
            {"from", point(line.line.start)},
            {"over_cut", exact(line.over_cuts.front())},
            {"parts", parts}};
  }

  Json trim_json(const GrooveTrim& trim) const {
    Json out = {{"openings", trim.openings}, {"face", "up"}, {"shave", exact(trim.width)}};
    guide_json(trim.guide ? std::optional(trim.guide->guide) : std::nullopt,
               trim.guide ? trim.guide->block : std::nullopt, out);
    return out;
  }

  const CuttingPlan& plan_;
};

}  // namespace

nlohmann::ordered_json settings_json(const CutterProfile& cutter, const Settings& settings) {
  Json out;
  add_guide(cutter, settings.guide, settings.block, out);
  const auto stop = [&](const std::optional<Length>& place, const std::optional<StopScale>& scale) {
    return place ? setting_json(cutter, *place, scale->zero) : Json();
  };
  out["near_stop"] = stop(settings.near_stop, cutter.near_stop);
  out["far_stop"] = stop(settings.far_stop, cutter.far_stop);
  out["arm_block"] =
      settings.arm_block ? Json(format_exact(*settings.arm_block, cutter.scale.unit)) : Json();
  return out;
}

nlohmann::ordered_json plan_json(const CuttingPlan& plan) {
  return PlanWriter(plan).write();
}

std::string plan_to_json(const CuttingPlan& plan) {
  return plan_json(plan).dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace mullion
