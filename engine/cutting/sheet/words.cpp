#include "engine/cutting/sheet/words.h"

#include <algorithm>
#include <map>

#include "engine/cutting/sheet/scale_text.h"

namespace mullion {
namespace {

std::string length(const CuttingPlan& plan, Length value) {
  return scale_text(value, Length(), plan.cutter.scale).all();
}

std::string mark_text(const CuttingPlan& plan, Length past) {
  if (past == Length()) return "onto the line";
  return amount_text(past, plan.cutter.scale) +
         (past > Length() ? " past the line" : " short of the line");
}

std::string end_text(const CuttingPlan& plan, const CutEnd& end, const char* stop) {
  if (end.by == EndBy::stop) return std::string("at the ") + stop + " stop";
  std::string out = end.by == EndBy::cut ? "by eye at cut " : "by eye at pencil line ";
  out += std::to_string(end.reference);
  return end.past == Length() ? out : out + " (mark " + mark_text(plan, end.past) + ")";
}

std::string both_marks_text(const CuttingPlan& plan, const SkewCut& cut) {
  if (cut.past == Length()) return "onto both points";
  return amount_text(cut.past, plan.cutter.scale) +
         (cut.past < Length() ? " short of both points" : " past both points");
}

std::string point_text(const CuttingPlan& plan, const Point& p) {
  return length(plan, p.y) + " from edge A and " + length(plan, p.x) + " from edge B";
}

}  // namespace

std::string edge_text(BoardEdge edge) {
  return std::string(1, letter(edge)) + " (" + front_name(edge) + " as seen from the front)";
}

std::string turn_text(int quarter_turns) {
  constexpr const char* turns[] = {"as it lies", "quarter turn to the right", "half turn",
                                   "quarter turn to the left"};
  return turns[quarter_turns % 4];
}

std::string block_text(const CuttingPlan& plan, const Block& block) {
  return "block " + length(plan, block.width) + " wide " +
         (block.outside ? "outside the guide" : "between guide and board");
}

std::string guide_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.guide) return "freehand";
  return scale_text(*settings.guide, plan.cutter.guide->zero, plan.cutter.scale).all();
}

std::string near_stop_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.near_stop) return "by eye";
  return scale_text(*settings.near_stop, plan.cutter.near_stop->zero, plan.cutter.scale).all();
}

std::string far_stop_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.far_stop) return "by eye";
  return scale_text(*settings.far_stop, plan.cutter.far_stop->zero, plan.cutter.scale).all();
}

std::string numbered(const char* what, const std::vector<int>& numbers) {
  std::string out = std::string(what) + (numbers.size() == 1 ? " " : "s ");
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    out += (i > 0 ? ", " : "") + std::to_string(numbers[i]);
  }
  return out;
}

std::string openings_text(const std::vector<int>& openings) {
  return openings.empty() ? "all openings" : numbered("opening", openings);
}

std::string line_text(const BevelCut& cut) {
  return openings_text(cut.openings) + ", " + front_name(cut.kept) + " line";
}

std::string ends_text(const CuttingPlan& plan, const BevelCut& cut) {
  return "start " + end_text(plan, cut.start, "far") + ", end " + end_text(plan, cut.end, "near");
}

std::string settings_text(const CuttingPlan& plan, const Settings& settings) {
  std::string out = "guide " + guide_text(plan, settings);
  if (settings.block) out += ", " + block_text(plan, *settings.block);
  if (plan.way != Way::pencilled) {
    out += " | near stop " + near_stop_text(plan, settings) + " | far stop " +
           far_stop_text(plan, settings);
  }
  return out;
}

std::optional<Length> common_past(const Stage& stage) {
  std::optional<Length> common;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) {
        for (const CutEnd* end : {&cut.start, &cut.end}) {
          if (end->by == EndBy::stop) continue;
          if (common && *common != end->past) return std::nullopt;
          common = end->past;
        }
      }
    }
  }
  return common;
}

bool lines_are_named(const CuttingPlan& plan, const Stage& stage) {
  return plan.way != Way::pencilled || !stage.skew_cuts.empty() || !stage.curves.empty();
}

std::string by_eye_text(const CuttingPlan& plan, const Stage& stage) {
  const std::optional<Length> past = common_past(stage);
  if (!past) return "";
  return "Where a cut starts or ends by eye, bring the head's mark " + mark_text(plan, *past) + ".";
}

std::string brief_ends_text(const CuttingPlan& plan, const Stage& stage, const BevelCut& cut) {
  const bool say_mark = !common_past(stage);
  std::string out;
  const auto add = [&](const char* what, const CutEnd& end) {
    if (end.by == EndBy::stop) return;
    out += (out.empty() ? "" : ", ") + std::string(what) +
           (end.by == EndBy::cut ? " at cut " : " at line ") + std::to_string(end.reference);
    if (say_mark) out += ", mark " + mark_text(plan, end.past);
  };
  if (!say_mark && !lines_are_named(plan, stage)) return "";
  add("start", cut.start);
  add("end", cut.end);
  return out;
}

std::string freehand_text(const CuttingPlan& plan, const BevelCut& cut) {
  if (cut.pencil == 0) return "";
  return "freehand: bring pencil line " + std::to_string(cut.pencil) + ", " +
         length(plan, cut.distance) + " from the edge, under the rail";
}

std::vector<Marking> markings_of(const Stage& stage) {
  std::map<std::pair<BoardEdge, Length>, Marking> markings;
  for (const PencilLine& line : stage.pencil_lines) {
    Marking& marking = markings[{line.edge, line.distance}];
    marking.edge = line.edge;
    marking.distance = line.distance;
    marking.lines.push_back(line.number);
    for (const int opening : line.openings) marking.openings.push_back(opening);
  }
  std::vector<Marking> out;
  for (auto& [place, marking] : markings) out.push_back(std::move(marking));
  return out;
}

std::string marking_text(const CuttingPlan& plan, const Marking& marking) {
  return length(plan, marking.distance) + " from edge " + std::string(1, letter(marking.edge)) +
         ": " + numbered("line", marking.lines) + ", at " + openings_text(marking.openings);
}

std::string outside_blocks_text(const CuttingPlan& plan, const Stage& stage) {
  std::map<Length, GuideSetting> blocks;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) {
        if (cut.instead) blocks.emplace(cut.distance, *cut.instead);
      }
    }
  }
  if (blocks.empty()) return "";
  std::string out =
      "instead of freehand cuts, where a board can lie over your guide's bar, with a block outside "
      "the guide";
  std::optional<Length> guide;
  for (const auto& [distance, setting] : blocks) {
    Settings settings;
    settings.guide = setting.guide;
    if (guide != setting.guide) out += "; guide at " + guide_text(plan, settings) + ": ";
    out += (guide == setting.guide ? ", " : "") + length(plan, setting.block->width) + " for " +
           length(plan, distance);
    guide = setting.guide;
  }
  return out;
}

std::string skew_brief_text(const CuttingPlan& plan, const SkewCut& cut) {
  const auto point = [&](const Point& p) {
    return length(plan, p.y) + " from A, " + length(plan, p.x) + " from B";
  };
  return std::to_string(cut.number) + "  " + openings_text(cut.openings) + ": " + point(cut.from) +
         " to " + point(cut.to);
}

std::string skew_marks_text(const CuttingPlan& plan, const Stage& stage) {
  return "mark " + both_marks_text(plan, stage.skew_cuts.front());
}

std::string skew_text(const CuttingPlan& plan, const SkewCut& cut) {
  return openings_text(cut.openings) + ", freehand on a pencil line from " +
         point_text(plan, cut.from) + " to " + point_text(plan, cut.to) + ", mark " +
         both_marks_text(plan, cut);
}

namespace {

// 0.2 mm of a reveal is hardly seen; our own figure.
constexpr Length worth_saying = Length::from_ticks(320);

// "0.4 mm": rounded up to a tenth, for what no scale is set to.
std::string tenths_text(Length value) {
  constexpr Length tenth = Length::from_ticks(160);
  const std::int64_t tenths = (value.ticks() + tenth.ticks() - 1) / tenth.ticks();
  return format_exact(tenth * tenths, Unit::millimetre);
}

std::string template_text(const CurveCut& curve) {
  Length past;
  for (const TemplateLine& line : curve.lines) {
    past = std::max(past, *std::max_element(line.over_cuts.begin(), line.over_cuts.end()));
  }
  return "the curves by hand along the full-scale template, after the straight lines" +
         (past >= worth_saying ? ", up to " + tenths_text(past) + " past each corner" : "");
}

// How an oval cutter is set.
std::string axes_text(const CuttingPlan& plan, const CurveCut& curve) {
  const Rect& b = curve.back;
  const auto axes = [&](const Rect& box) {
    return length(plan, box.width()) + " x " + length(plan, box.height());
  };
  return "oval cutter, axes " + axes(curve.back) + " on the back and " + axes(curve.face) +
         " on the face (half-axes " + length(plan, half_rounded_down(b.width())) + " and " +
         length(plan, half_rounded_down(b.height())) + " on the back)" +
         (curve.off >= worth_saying
              ? "; the ellipse lies up to " + tenths_text(curve.off) + " off the template's line"
              : "");
}

std::string centre_text(const CuttingPlan& plan, const Rect& box) {
  return "centre " + point_text(plan, {half_rounded_down(box.left + box.right),
                                       half_rounded_down(box.top + box.bottom)});
}

}  // namespace

std::vector<std::string> curve_texts(const CuttingPlan& plan, const Stage& stage) {
  std::vector<std::string> out;
  std::map<std::string, std::string> first;  // the openings that an oval was first set for
  for (const CurveCut& curve : stage.curves) {
    const std::string openings = openings_text(curve.openings);
    if (curve.kind == CurveKind::template_cut) {
      out.push_back(openings + ": " + template_text(curve));
      continue;
    }
    const std::string axes = axes_text(plan, curve);
    const auto [at, is_new] = first.emplace(axes, openings);
    out.push_back(openings + ": " + (is_new ? axes : "oval cutter set as for " + at->second) +
                  "; " + centre_text(plan, curve.back));
  }
  return out;
}

std::string trim_text(const CuttingPlan& plan, const GrooveTrim& trim) {
  std::string out = "the panel of " + openings_text(trim.openings) + " face up: shave " +
                    (trim.rectangle ? "all four edges" : "every edge, curves by hand,") + " by " +
                    length(plan, trim.width);
  if (trim.guide) {
    Settings settings;
    settings.guide = trim.guide->guide;
    out += ", guide " + guide_text(plan, settings);
    if (trim.guide->block) out += ", " + block_text(plan, *trim.guide->block);
  } else {
    out += ", freehand on a pencil line";
  }
  return out + "; then tape it back from behind";
}

std::string blank_size_text(const CutterProfile& cutter, const StraightCut& side) {
  const Length set = side.size + half_rounded_down(cutter.kerf);
  const auto text = [&](Length value, Length zero) {
    return scale_text(value, zero, cutter.scale).all();
  };
  return (side.by_stop ? "arm stop " + text(set, cutter.arm_zero)
                       : "pencil line at " + text(side.size, Length()) + " (beyond the arm)") +
         ": cut " + text(side.length, Length()) + " long";
}

std::string blank_text(const CuttingPlan& plan, const StraightCut& side) {
  return blank_size_text(plan.cutter, side) + ", for " + numbered("layer", side.layers);
}

std::string distance_text(const CuttingPlan& plan, Length distance) {
  return length(plan, distance);
}

std::string stage_brief_text(const Stage& stage) {
  if (stage.kind == StageKind::groove) return "V-grooves";
  return "Layer " + std::to_string(stage.layer) + ": " + stage.name +
         (stage.board.empty() ? "" : ", " + stage.board);
}

std::string stage_text(const CuttingPlan& plan, const Stage& stage) {
  return stage_brief_text(stage) + ", blank " + length(plan, stage.blank.width()) + " x " +
         length(plan, stage.blank.height());
}

std::string shift_text(const CuttingPlan& plan, const Stage& stage) {
  if (!stage.shift) return "";
  const LayerShift& s = *stage.shift;
  const auto amount = [&](Length value) { return amount_text(value, plan.cutter.scale); };
  std::string out = s.guide < Length() ? "guide closed by " : "guide opened by ";
  out += amount(s.guide);
  if (plan.way == Way::pencilled) return out;
  const bool in = s.stops >= Length();
  out += ", near stop " + amount(s.stops) + (in ? " away from" : " toward") +
         " the arm, far stop " + amount(s.stops) + (in ? " toward it" : " away from it");
  return out;
}

std::string prepare_text(const CuttingPlan& plan, const Stage& stage) {
  if (stage.kind == StageKind::groove) {
    return "Cut the panels out as windows, shave their edges, tape them back; then cut the "
           "openings.";
  }
  if (stage.layer == 1) return "";
  if (!stage.taped) {
    return "Cut by itself, from a blank of the same size; keep edge A the top edge.";
  }
  return "Put all fallouts back. Tape this blank on behind, face down, centred: " +
         length(plan, stage.blank.left) +
         " of the top mat shows all around. The top mat's edges stay at guide and arm.";
}

std::string duration_text(std::int64_t seconds) {
  const std::int64_t minutes = (seconds + 59) / 60;
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + std::to_string(minutes % 60) + " min";
}

}  // namespace mullion
