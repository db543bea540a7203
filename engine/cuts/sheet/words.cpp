#include "engine/cuts/sheet/words.h"

#include <algorithm>
#include <map>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/job/layer_name.h"

namespace mullion {
namespace {

std::string length(const ToldPlan& plan, Length value) {
  return scale_text(value, Length(), plan.cutter.scale, plan.locale).all();
}

std::string amount(const ToldPlan& plan, Length value) {
  return amount_text(value, plan.cutter.scale, plan.locale);
}

std::string listed(const std::vector<int>& numbers) {
  std::string out;
  for (const int number : numbers) out += (out.empty() ? "" : ", ") + std::to_string(number);
  return out;
}

std::string lines_text(const std::vector<int>& lines, const Locale& locale) {
  return locale.say(lines.size() == 1 ? mark("line %1") : mark("lines %1"), listed(lines));
}

std::string mark_text(const ToldPlan& plan, Length past) {
  if (past == Length()) return plan.locale.say("onto the line");
  return plan.locale.say(past > Length() ? mark("%1 past the line") : mark("%1 short of the line"),
                         amount(plan, past));
}

std::string end_text(const ToldPlan& plan, const CutEnd& end, const char* stop) {
  if (end.by == EndBy::stop) return std::string("at the ") + stop + " stop";
  std::string out = end.by == EndBy::cut ? "by eye at cut " : "by eye at pencil line ";
  out += std::to_string(end.reference);
  return end.past == Length() ? out : out + " (mark " + mark_text(plan, end.past) + ")";
}

std::string both_marks_text(const ToldPlan& plan, const SkewCut& cut) {
  if (cut.past == Length()) return plan.locale.say("mark onto both points");
  return plan.locale.say(
      cut.past < Length() ? mark("mark %1 short of both points") : mark("mark %1 past both points"),
      amount(plan, cut.past));
}

std::string point_text(const ToldPlan& plan, const Point& p) {
  return plan.locale.say("%1 from edge A and %2 from edge B", length(plan, p.y), length(plan, p.x));
}

}  // namespace

std::string edge_text(BoardEdge edge) {
  return std::string(1, letter(edge)) + " (" + front_name(edge) + " as seen from the front)";
}

std::string turn_text(int quarter_turns, const Locale& locale) {
  constexpr const char* turns[] = {mark("as it lies"), mark("quarter turn to the right"),
                                   mark("half turn"), mark("quarter turn to the left")};
  return locale.say(turns[quarter_turns % 4]);
}

std::string block_text(const ToldPlan& plan, const Block& block) {
  return plan.locale.say(block.outside ? mark("block %1 wide outside the guide")
                                       : mark("block %1 wide between guide and board"),
                         length(plan, block.width));
}

std::string guide_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.guide) return plan.locale.say("freehand");
  return scale_text(*settings.guide, plan.cutter.guide->zero, plan.cutter.scale, plan.locale).all();
}

std::string near_stop_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.near_stop) return "by eye";
  return scale_text(*settings.near_stop, plan.cutter.near_stop->zero, plan.cutter.scale).all();
}

std::string far_stop_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.far_stop) return "by eye";
  return scale_text(*settings.far_stop, plan.cutter.far_stop->zero, plan.cutter.scale).all();
}

std::string layers_text(const std::vector<int>& layers, const Locale& locale) {
  return locale.say(layers.size() == 1 ? mark("layer %1") : mark("layers %1"), listed(layers));
}

std::string openings_text(const std::vector<int>& openings, const Locale& locale) {
  if (openings.empty()) return locale.say("all openings");
  return locale.say(openings.size() == 1 ? mark("opening %1") : mark("openings %1"),
                    listed(openings));
}

std::string line_text(const BevelCut& cut) {
  return openings_text(cut.openings) + ", " + front_name(cut.kept) + " line";
}

std::string ends_text(const ToldPlan& plan, const BevelCut& cut) {
  return "start " + end_text(plan, cut.start, "far") + ", end " + end_text(plan, cut.end, "near");
}

std::string settings_text(const ToldPlan& plan, const Settings& settings) {
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

bool lines_are_named(const ToldPlan& plan, const Stage& stage) {
  return plan.way != Way::pencilled || !stage.skew_cuts.empty() || !stage.curves.empty();
}

std::string by_eye_text(const ToldPlan& plan, const Stage& stage) {
  const std::optional<Length> past = common_past(stage);
  if (!past) return "";
  return plan.locale.say("Where a cut starts or ends by eye, bring the head's mark %1.",
                         mark_text(plan, *past));
}

std::string brief_ends_text(const ToldPlan& plan, const Stage& stage, const BevelCut& cut) {
  const bool say_mark = !common_past(stage);
  std::string out;
  const auto add = [&](const char* at_cut, const char* at_line, const CutEnd& end) {
    if (end.by == EndBy::stop) return;
    if (!out.empty()) out += ", ";
    out += plan.locale.say(end.by == EndBy::cut ? at_cut : at_line, end.reference);
    if (say_mark) out += plan.locale.say(", mark %1", mark_text(plan, end.past));
  };
  if (!say_mark && !lines_are_named(plan, stage)) return "";
  add(mark("start at cut %1"), mark("start at line %1"), cut.start);
  add(mark("end at cut %1"), mark("end at line %1"), cut.end);
  return out;
}

std::string freehand_text(const ToldPlan& plan, const BevelCut& cut) {
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
  out.reserve(markings.size());
  for (auto& [place, marking] : markings) out.push_back(std::move(marking));
  return out;
}

std::string marking_text(const ToldPlan& plan, const Marking& marking) {
  return plan.locale.say("%1 from edge %2: %3, at %4", length(plan, marking.distance),
                         std::string(1, letter(marking.edge)),
                         lines_text(marking.lines, plan.locale),
                         openings_text(marking.openings, plan.locale));
}

std::string outside_blocks_text(const ToldPlan& plan, const Stage& stage) {
  std::map<Length, GuideSetting> blocks;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) {
        if (cut.instead) blocks.emplace(cut.distance, *cut.instead);
      }
    }
  }
  if (blocks.empty()) return "";
  const Locale& locale = plan.locale;
  std::string out = locale.say(
      "instead of freehand cuts, where a board can lie over your guide's bar, with a block outside "
      "the guide");
  std::optional<Length> guide;
  for (const auto& [distance, setting] : blocks) {
    Settings settings;
    settings.guide = setting.guide;
    out +=
        guide == setting.guide ? ", " : locale.say("; guide at %1: ", guide_text(plan, settings));
    out += locale.say("%1 for %2", length(plan, setting.block->width), length(plan, distance));
    guide = setting.guide;
  }
  return out;
}

std::string skew_brief_text(const ToldPlan& plan, const SkewCut& cut) {
  const auto point = [&](const Point& p) {
    return plan.locale.say("%1 from A, %2 from B", length(plan, p.y), length(plan, p.x));
  };
  return plan.locale.say("%1  %2: %3 to %4", cut.number, openings_text(cut.openings, plan.locale),
                         point(cut.from), point(cut.to));
}

std::string skew_marks_text(const ToldPlan& plan, const Stage& stage) {
  return both_marks_text(plan, stage.skew_cuts.front());
}

std::string skew_text(const ToldPlan& plan, const SkewCut& cut) {
  return openings_text(cut.openings) + ", freehand on a pencil line from " +
         point_text(plan, cut.from) + " to " + point_text(plan, cut.to) + ", " +
         both_marks_text(plan, cut);
}

namespace {

// 0.2 mm of a reveal is hardly seen; our own figure.
constexpr Length worth_saying = Length::from_ticks(320);

// "0.4 mm": rounded up to a tenth, for what no scale is set to.
std::string tenths_text(Length value, const Locale& locale) {
  constexpr Length tenth = Length::from_ticks(160);
  const std::int64_t tenths = (value.ticks() + tenth.ticks() - 1) / tenth.ticks();
  return locale.exact_length(tenth * tenths, Unit::millimetre);
}

std::string template_text(const CurveCut& curve, const Locale& locale) {
  Length past;
  for (const CurveLine& line : curve.lines) {
    past = std::max(past, *std::max_element(line.over_cuts.begin(), line.over_cuts.end()));
  }
  if (past < worth_saying) {
    return locale.say("the curves by hand along the full-scale template, after the straight lines");
  }
  return locale.say(
      "the curves by hand along the full-scale template, after the straight lines, up to %1 past "
      "each corner",
      tenths_text(past, locale));
}

// How an oval cutter is set.
std::string axes_text(const ToldPlan& plan, const CurveCut& curve) {
  const Rect& b = curve.back;
  const auto axes = [&](const Rect& box) {
    return plan.locale.say("%1 x %2", length(plan, box.width()), length(plan, box.height()));
  };
  std::string out = plan.locale.say(
      "oval cutter, axes %1 on the back and %2 on the face (half-axes %3 and %4 on the back)",
      axes(curve.back), axes(curve.face), length(plan, half_rounded_down(b.width())),
      length(plan, half_rounded_down(b.height())));
  if (curve.off < worth_saying) return out;
  return out + plan.locale.say("; the ellipse lies up to %1 off the template's line",
                               tenths_text(curve.off, plan.locale));
}

std::string centre_text(const ToldPlan& plan, const Rect& box) {
  return plan.locale.say("centre %1", point_text(plan, {half_rounded_down(box.left + box.right),
                                                        half_rounded_down(box.top + box.bottom)}));
}

}  // namespace

std::vector<std::string> curve_texts(const ToldPlan& plan, const Stage& stage) {
  std::vector<std::string> out;
  std::map<std::string, std::string> first;  // the openings that an oval was first set for
  for (const CurveCut& curve : stage.curves) {
    const std::string openings = openings_text(curve.openings, plan.locale);
    if (curve.kind == CurveKind::template_cut) {
      out.push_back(plan.locale.say("%1: %2", openings, template_text(curve, plan.locale)));
      continue;
    }
    const std::string axes = axes_text(plan, curve);
    const auto [at, is_new] = first.emplace(axes, openings);
    out.push_back(
        plan.locale.say("%1: %2; %3", openings,
                        is_new ? axes : plan.locale.say("oval cutter set as for %1", at->second),
                        centre_text(plan, curve.back)));
  }
  return out;
}

std::string trim_text(const ToldPlan& plan, const GrooveTrim& trim) {
  const Locale& locale = plan.locale;
  std::string how = locale.say("freehand on a pencil line");
  if (trim.guide) {
    Settings settings;
    settings.guide = trim.guide->guide;
    how = locale.say("guide %1", guide_text(plan, settings));
    if (trim.guide->block) how += ", " + block_text(plan, *trim.guide->block);
  }
  return locale.say(
      trim.rectangle
          ? mark("the panel of %1 face up: shave all four edges by %2, %3; then tape it back from "
                 "behind")
          : mark("the panel of %1 face up: shave every edge, curves by hand, by %2, %3; then tape "
                 "it back from behind"),
      openings_text(trim.openings, locale), length(plan, trim.width), how);
}

std::string blank_size_text(const CutterProfile& cutter, const StraightCut& side,
                            const Locale& locale) {
  const Length set = side.size + half_rounded_down(cutter.kerf);
  const auto text = [&](Length value, Length zero) {
    return scale_text(value, zero, cutter.scale, locale).all();
  };
  if (side.by_stop) {
    return locale.say("arm stop %1: cut %2 long", text(set, cutter.arm_zero),
                      text(side.length, Length()));
  }
  return locale.say("pencil line at %1 (beyond the arm): cut %2 long", text(side.size, Length()),
                    text(side.length, Length()));
}

std::string blank_text(const ToldPlan& plan, const StraightCut& side) {
  return plan.locale.say("%1, for %2", blank_size_text(plan.cutter, side, plan.locale),
                         layers_text(side.layers, plan.locale));
}

std::string distance_text(const ToldPlan& plan, Length distance) {
  return length(plan, distance);
}

std::string stage_brief_text(const Stage& stage, const Locale& locale) {
  if (stage.kind == StageKind::groove) return locale.say("V-grooves");
  const std::string name = name_on_paper(stage.name, stage.layer, locale);
  return locale.say("Layer %1: %2", stage.layer,
                    stage.board.empty() ? name : name + ", " + stage.board);
}

std::string stage_text(const ToldPlan& plan, const Stage& stage) {
  return plan.locale.say("%1, blank %2 x %3", stage_brief_text(stage, plan.locale),
                         length(plan, stage.blank.width()), length(plan, stage.blank.height()));
}

std::string shift_text(const ToldPlan& plan, const Stage& stage) {
  if (!stage.shift) return "";
  const LayerShift& s = *stage.shift;
  const Locale& locale = plan.locale;
  const std::string guide =
      locale.say(s.guide < Length() ? mark("guide closed by %1") : mark("guide opened by %1"),
                 amount(plan, s.guide));
  if (plan.way == Way::pencilled) return guide;
  return locale.say(s.stops >= Length()
                        ? mark("%1, near stop %2 away from the arm, far stop %2 toward it")
                        : mark("%1, near stop %2 toward the arm, far stop %2 away from it"),
                    guide, amount(plan, s.stops));
}

std::string prepare_text(const ToldPlan& plan, const Stage& stage) {
  const Locale& locale = plan.locale;
  if (stage.kind == StageKind::groove) {
    return locale.say(
        "Cut the panels out as windows, shave their edges, tape them back; then cut the openings.");
  }
  if (stage.layer == 1) return "";
  if (!stage.taped) {
    return locale.say("Cut by itself, from a blank of the same size; keep edge A the top edge.");
  }
  return locale.say(
      "Put all fallouts back. Tape this blank on behind, face down, centred: %1 of the top mat "
      "shows all around. The top mat's edges stay at guide and arm.",
      length(plan, stage.blank.left));
}

std::string duration_text(std::int64_t seconds, const Locale& locale) {
  const std::int64_t minutes = (seconds + 59) / 60;
  if (minutes < 60) return locale.say("%1 min", minutes);
  return locale.say("%1 h %2 min", minutes / 60, minutes % 60);
}

}  // namespace mullion
