#include "engine/cuts/sheet/words.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/job/layer_name.h"

namespace mullion {
namespace {

std::string length(const ToldPlan& plan, Length value) {
  return rule_text(value, plan.cutter.scale, plan.locale);
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

// As it is printed: what rounds to nothing is nothing.
bool none(const ToldPlan& plan, Length past) {
  return shown_on(plan.cutter.scale, past, Length()) == Length();
}

std::string mark_text(const ToldPlan& plan, Length past) {
  if (none(plan, past)) return plan.locale.say("onto the line");
  return plan.locale.say(past > Length() ? mark("%1 past the line") : mark("%1 short of the line"),
                         amount(plan, past));
}

std::string end_text(const ToldPlan& plan, const CutEnd& end, const char* stop) {
  if (end.by == EndBy::stop) return std::string("at the ") + stop + " stop";
  std::string out = end.by == EndBy::cut ? "by eye at cut " : "by eye at pencil line ";
  out += std::to_string(end.reference);
  return none(plan, end.past) ? out : out + " (mark " + mark_text(plan, end.past) + ")";
}

std::string both_marks_text(const ToldPlan& plan, const SkewCut& cut) {
  const Locale& locale = plan.locale;
  if (cut.from_past == cut.to_past) {
    if (none(plan, cut.from_past)) return locale.say("mark onto both points");
    return locale.say(cut.from_past < Length() ? mark("mark %1 short of both points")
                                               : mark("mark %1 past both points"),
                      amount(plan, cut.from_past));
  }
  return locale.say("mark %1 at the start, %2 at the end", mark_text(plan, cut.from_past),
                    mark_text(plan, cut.to_past));
}

std::string point_text(const ToldPlan& plan, const Stage& stage, const Point& p) {
  return plan.locale.say("%1 from edge %2 and %3 from edge B", length(plan, p.y),
                         edge_name(stage, BoardEdge::top, plan.locale), length(plan, p.x));
}

bool uses_stops(Way way) {
  return way >= Way::one_stop;
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

std::string arm_block_text(const ToldPlan& plan, Length width) {
  return plan.locale.say("block %1 wide between arm and board", length(plan, width));
}

std::string guide_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.guide) return plan.locale.say("freehand");
  return scale_text(*settings.guide, plan.cutter.guide->zero, plan.cutter.scale, plan.locale).shows;
}

std::string near_stop_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.near_stop) return "by eye";
  return scale_text(*settings.near_stop, plan.cutter.near_stop->zero, plan.cutter.scale).shows;
}

std::string far_stop_text(const ToldPlan& plan, const Settings& settings) {
  if (!settings.far_stop) return "by eye";
  return scale_text(*settings.far_stop, plan.cutter.far_stop->zero, plan.cutter.scale).shows;
}

std::string edge_name(const Stage& stage, BoardEdge edge, const Locale& locale) {
  const std::string name(1, letter(edge));
  return stage.taped ? locale.say("%1 of the top mat", name) : name;
}

std::string lay_text(const ToldPlan& plan, BoardEdge at_guide, bool laid, int turns) {
  if (!laid) return turn_text(turns, plan.locale);
  const std::string away(1, letter(far_edge(at_guide, plan.cutter.side)));
  return plan.locale.say("lay edge %1 away from you", away);
}

std::string how_boards_lie(const CutterProfile& cutter, const Locale& locale) {
  return locale.say(cutter.stroke == Stroke::pull
                        ? mark("Boards lie face down; letter the back's edges clockwise: A top, B, "
                               "C, D. Red: cut now, pulled toward you.")
                        : mark("Boards lie face down; letter the back's edges clockwise: A top, B, "
                               "C, D. Red: cut now, pushed away from you."));
}

namespace {

std::string error_text(Length error, const Locale& locale) {
  const Length tenth = Length::from_ticks(160);
  return locale.exact_length(round_to_multiple(error, tenth), Unit::millimetre);
}

}  // namespace

std::string chosen_text(const CuttingPlan& plan, const Locale& locale) {
  const auto takes = [&](const WayTime& way) {
    return locale.say("%1, %2, likely %3 off", locale.say(name_of(way.way)),
                      duration_text(way.seconds, locale), error_text(way.error, locale));
  };
  const WayTime* chosen = nullptr;
  const WayTime* other = nullptr;
  for (const WayTime& way : plan.ways) {
    if (way.way == plan.way) {
      chosen = &way;
    } else if (other == nullptr) {
      other = &way;
    }
  }
  if (chosen == nullptr) return "";
  if (chosen->error == Length()) {
    return locale.say("Curves and square cuts alone: %1.", duration_text(chosen->seconds, locale));
  }
  const std::string first = locale.say("Cut with %1.", takes(*chosen));
  if (other == nullptr) return first;
  if (other->cost < chosen->cost) {
    return locale.say("%1 It was asked for; %2 would cost less.", first, takes(*other));
  }
  const bool quicker = other->seconds < chosen->seconds, exacter = other->error < chosen->error;
  return locale.say(quicker   ? mark("%1 Next best: %2: quicker, but less exact.")
                    : exacter ? mark("%1 Next best: %2: more exact, but slower.")
                              : mark("%1 Next best: %2: neither quicker nor more exact."),
                    first, takes(*other));
}

std::string gauges_text(const ToldPlan& plan) {
  if (plan.gauges.empty()) return "";
  std::string widths;
  for (const Length width : plan.gauges) {
    widths += (widths.empty() ? "" : ", ") + scale_text(width + half_rounded_down(plan.cutter.kerf),
                                                        plan.cutter.arm_zero, plan.cutter.scale,
                                                        plan.locale)
                                                 .shows;
  }
  return plan.locale.say("Spacers from scrap, with the arm stop at: %1. Write its width on each.",
                         widths);
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
  if (settings.arm_block) out += ", " + arm_block_text(plan, *settings.arm_block);
  if (uses_stops(plan.way)) {
    out += " | near stop " + near_stop_text(plan, settings) + " | far stop " +
           far_stop_text(plan, settings);
  }
  return out;
}

std::optional<Length> common_past(const Stage& stage) {
  std::optional<Length> common;
  for (const BevelCut* cut : cuts_of(stage)) {
    for (const CutEnd* end : {&cut->start, &cut->end}) {
      if (end->by == EndBy::stop) continue;
      if (common && *common != end->past) return std::nullopt;
      common = end->past;
    }
  }
  return common;
}

bool lines_are_named(const ToldPlan& plan, const Stage& stage) {
  // Lines along the guide are drawn without a word on which openings they serve.
  return uses_stops(plan.way) || plan.way == Way::guide_marked || !stage.skew_cuts.empty() ||
         !stage.curves.empty();
}

std::string by_eye_text(const ToldPlan& plan, const Stage& stage) {
  const std::optional<Length> past = common_past(stage);
  if (!past) return "";
  return plan.locale.say("Where a cut starts or ends by eye, bring the head's mark %1.",
                         mark_text(plan, *past));
}

std::string brief_ends_text(const ToldPlan& plan, const Stage& stage, const BevelCut& cut) {
  const bool say_mark = !common_past(stage);
  if (!say_mark && !lines_are_named(plan, stage)) return "";
  const Locale& locale = plan.locale;
  std::string out;
  const auto add = [&](const char* at_cut, const char* at_line, const CutEnd& end) {
    if (end.by == EndBy::stop) return;
    if (!out.empty()) out += ", ";
    if (end.by == EndBy::cut) {
      out += locale.say(at_cut, end.reference);
    } else {
      const PencilLine& line = stage.pencil_lines[static_cast<std::size_t>(end.reference) - 1];
      out += locale.say(at_line, length(plan, line.distance), std::string(1, letter(line.edge)));
    }
    if (say_mark) out += locale.say(", mark %1", mark_text(plan, end.past));
  };
  add(mark("start at cut %1"), mark("start at the line %1 from %2"), cut.start);
  add(mark("end at cut %1"), mark("end at the line %1 from %2"), cut.end);
  return out;
}

std::string line_up_text(const ToldPlan& plan) {
  const std::optional<Length>& line = plan.cutter.line_from_rail;
  const Locale& locale = plan.locale;
  if (!line) return locale.say("under the blade's point at both of its ends");
  if (*line == Length()) return locale.say("along the rail's edge");
  return locale.say(*line > Length() ? mark("%1 from the rail's edge, away from the guide's side")
                                     : mark("%1 from the rail's edge, toward the guide's side"),
                    amount(plan, *line));
}

std::string freehand_lines_text(const ToldPlan& plan, const Stage& stage) {
  const std::vector<const BevelCut*> cuts = cuts_of(stage);
  const bool freehand =
      std::any_of(cuts.begin(), cuts.end(), [](const BevelCut* cut) { return cut->pencil > 0; });
  if (!freehand && stage.skew_cuts.empty()) return "";
  return plan.locale.say("For a freehand cut bring its line %1.", line_up_text(plan));
}

std::string freehand_text(const ToldPlan& plan, const Stage& stage, const BevelCut& cut) {
  if (cut.pencil == 0) return "";
  const BoardEdge edge = edge_at_guide(cut.kept, plan.cutter.lean);
  return "freehand: bring pencil line " + std::to_string(cut.pencil) + ", " +
         length(plan, cut.distance) + " from edge " + edge_name(stage, edge) + ", " +
         line_up_text(plan);
}

namespace {

std::vector<Marking> markings_among(const Stage& stage, bool by_guide_too) {
  std::map<std::pair<BoardEdge, Length>, Marking> markings;
  for (const PencilLine& line : stage.pencil_lines) {
    if (line.by_guide && !by_guide_too) continue;
    Marking& marking = markings[{line.edge, line.distance}];
    marking.edge = line.edge;
    marking.distance = line.distance;
    marking.lines.push_back(line.number);
    for (const int opening : line.openings) marking.openings.push_back(opening);
  }
  std::vector<Marking> out;
  out.reserve(markings.size());
  for (auto& [place, marking] : markings) {
    std::sort(marking.openings.begin(), marking.openings.end());
    out.push_back(std::move(marking));
  }
  return out;
}

}  // namespace

std::vector<Marking> markings_of(const Stage& stage) {
  return markings_among(stage, false);
}

std::vector<Marking> all_markings_of(const Stage& stage) {
  return markings_among(stage, true);
}

std::string marking_text(const ToldPlan& plan, const Stage& stage, const Marking& marking) {
  return plan.locale.say("%1 from edge %2: %3, at %4", length(plan, marking.distance),
                         edge_name(stage, marking.edge, plan.locale),
                         lines_text(marking.lines, plan.locale),
                         openings_text(marking.openings, plan.locale));
}

std::vector<std::string> guide_marking_texts(const ToldPlan& plan, const Stage& stage) {
  const Locale& locale = plan.locale;
  std::vector<std::string> out;
  for (const MarkSetUp& set_up : stage.marking) {
    std::string guide = guide_text(plan, settings_at(set_up.setting));
    if (set_up.setting.block) guide += ", " + block_text(plan, *set_up.setting.block);
    std::string edges;
    std::vector<int> lines;
    for (const MarkPlacement& placement : set_up.placements) {
      edges += (edges.empty() ? "" : ", ") + std::string(1, letter(placement.edge));
      lines.push_back(placement.line);
    }
    const std::string at_guide =
        lines.size() == 1 ? locale.say("with edge %1 at the guide", edges)
                          : locale.say("with each of the edges %1 at the guide in turn", edges);
    out.push_back(
        locale.say(plan.cutter.line_from_rail
                       ? mark("guide %1: pencil along the rail's edge %2: %3")
                       : mark("guide %1: draw with the blade's point, hardly touching, %2: %3"),
                   guide, at_guide, lines_text(lines, locale)));
  }
  return out;
}

std::string check_text(const ToldPlan& plan, const Stage& stage, const Check& check) {
  const Locale& locale = plan.locale;
  const auto size = [&] {
    return locale.say("%1 x %2", length(plan, check.width), length(plan, check.height));
  };
  switch (check.kind) {
    case Check::Kind::line:
      return locale.say("check: %1 from %2", length(plan, check.distance),
                        edge_name(stage, check.edge, locale));
    case Check::Kind::fallout:
      return locale.say("check: fallout %1 on its back", size());
    case Check::Kind::opening:
      return locale.say(check.openings.size() == 1 ? mark("check: %1 is %2 on the back")
                        : check.joined ? mark("check: the window of %1 is %2 on the back")
                                       : mark("check: %1 are each %2 on the back"),
                        openings_text(check.openings, locale), size());
    case Check::Kind::reveal:
      return locale.say("on scrap first: a reveal of %1 at the %2", length(plan, check.distance),
                        locale.say(front_name(check.edge)));
  }
  return "";
}

std::vector<std::string> checks_at(const ToldPlan& plan, const Stage& stage, int cut) {
  std::vector<std::string> out;
  for (const Check& check : stage.checks) {
    const int at = check.kind == Check::Kind::opening ? -1 : check.after_cut;
    if (at == cut) out.push_back(check_text(plan, stage, check));
  }
  return out;
}

std::vector<std::string> spacer_texts(const ToldPlan& plan, const Stage& stage) {
  const Locale& locale = plan.locale;
  std::vector<std::string> out;
  for (const SpacerStrip& strip : stage.strips) {
    out.push_back(locale.say("strip %1 wide, %2 long, straight, along edge %3",
                             length(plan, strip.width), length(plan, strip.length),
                             std::string(1, letter(strip.edge))));
  }
  for (const SpacerWindow& window : stage.squares) {
    const auto from = [&](Length distance) { return length(plan, distance); };
    const Rect &b = stage.blank, &w = window.back;
    out.push_back(locale.say(
        "%1: cut square through with a knife along a straight-edge, %2 from edge A, %3 from B, %4 "
        "from C, %5 from D",
        openings_text(window.openings, locale), from(w.top - b.top), from(w.left - b.left),
        from(b.bottom - w.bottom), from(b.right - w.right)));
  }
  return out;
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
    out += guide == setting.guide
               ? ", "
               : locale.say("; guide at %1: ", guide_text(plan, settings_at(setting)));
    out += locale.say("%1 for %2", length(plan, setting.block->width), length(plan, distance));
    guide = setting.guide;
  }
  return out;
}

std::string degrees_to_rail(const SkewCut& cut) {
  const auto run = [](Length a, Length b) {
    return std::abs(static_cast<double>((b - a).ticks()));
  };
  const double across = run(cut.from.x, cut.to.x), down = run(cut.from.y, cut.to.y);
  const auto tenths = std::llround(std::atan2(down, across) * 1800 / std::numbers::pi);
  const std::string whole = std::to_string(tenths / 10);
  return tenths % 10 == 0 ? whole : whole + "." + std::to_string(tenths % 10);
}

namespace {

bool marks_alike(const Stage& stage) {
  const SkewCut& first = stage.skew_cuts.front();
  return std::all_of(stage.skew_cuts.begin(), stage.skew_cuts.end(), [&](const SkewCut& cut) {
    return cut.from_past == first.from_past && cut.to_past == first.to_past;
  });
}

}  // namespace

std::string skew_brief_text(const ToldPlan& plan, const Stage& stage, const SkewCut& cut) {
  const auto point = [&](const Point& p) {
    return plan.locale.say("%1 from A, %2 from B", length(plan, p.y), length(plan, p.x));
  };
  const std::string out = plan.locale.say("%1  %2: %3 to %4; edge A at %5 degrees to the rail",
                                          cut.number, openings_text(cut.openings, plan.locale),
                                          point(cut.from), point(cut.to), degrees_to_rail(cut));
  return marks_alike(stage) ? out : out + ", " + both_marks_text(plan, cut);
}

std::string skew_marks_text(const ToldPlan& plan, const Stage& stage) {
  return marks_alike(stage) ? both_marks_text(plan, stage.skew_cuts.front()) : "";
}

std::string skew_text(const ToldPlan& plan, const Stage& stage, const SkewCut& cut) {
  return openings_text(cut.openings) + ", freehand on a pencil line from " +
         point_text(plan, stage, cut.from) + " to " + point_text(plan, stage, cut.to) +
         " (edge A at " + degrees_to_rail(cut) + " degrees to the rail), the line " +
         line_up_text(plan) + ", " + both_marks_text(plan, cut);
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

std::string centre_text(const ToldPlan& plan, const Stage& stage, const Rect& box) {
  return plan.locale.say("centre %1", point_text(plan, stage,
                                                 {half_rounded_down(box.left + box.right),
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
                        centre_text(plan, stage, curve.back)));
  }
  return out;
}

std::string trim_text(const ToldPlan& plan, const GrooveTrim& trim) {
  const Locale& locale = plan.locale;
  std::string how = locale.say("freehand on a pencil line");
  if (trim.guide) {
    how = locale.say("guide %1", guide_text(plan, settings_at(*trim.guide)));
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
  const Length blade = side.size + half_rounded_down(cutter.kerf);
  const std::string length = rule_text(side.length, cutter.scale, locale);
  if (!side.by_stop) {
    const std::string line = rule_text(side.size, cutter.scale, locale);
    return locale.say(side.strip
                          ? mark("pencil line at %1 (beyond the arm): cut a strip, at least "
                                 "%2 long")
                          : mark("pencil line at %1 (beyond the arm): then cut it off the strip"),
                      line, length);
  }
  const std::string stop = scale_text(blade, cutter.arm_zero, cutter.scale, locale).shows;
  return locale.say(side.strip ? mark("arm stop %1: first cut a strip, at least %2 long")
                               : mark("arm stop %1: then cut it off the strip"),
                    stop, length);
}

std::vector<std::string> blank_pair_texts(const ToldPlan& plan) {
  const CutterProfile& cutter = plan.cutter;
  const auto stop = [&](const StraightCut& side) {
    if (!side.by_stop) {
      return plan.locale.say("pencil line at %1", rule_text(side.size, cutter.scale, plan.locale));
    }
    const Length blade = side.size + half_rounded_down(cutter.kerf);
    return plan.locale.say("arm stop %1",
                           scale_text(blade, cutter.arm_zero, cutter.scale, plan.locale).shows);
  };
  std::vector<std::string> out;
  for (std::size_t i = 0; i + 1 < plan.blanks.size(); i += 2) {
    out.push_back(plan.locale.say("%1: a strip; then %2: the blank off it, for %3",
                                  stop(plan.blanks[i]), stop(plan.blanks[i + 1]),
                                  layers_text(plan.blanks[i].layers, plan.locale)));
  }
  return out;
}

std::string blank_text(const ToldPlan& plan, const StraightCut& side) {
  return plan.locale.say("%1, for %2", blank_size_text(plan.cutter, side, plan.locale),
                         layers_text(side.layers, plan.locale));
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
  const bool guided =
      std::any_of(stage.set_ups.begin(), stage.set_ups.end(),
                  [](const SetUp& set_up) { return set_up.settings.guide.has_value(); });
  if (!stage.shift || !guided) return "";
  const LayerShift& s = *stage.shift;
  const Locale& locale = plan.locale;
  const std::string guide =
      locale.say(s.guide < Length() ? mark("guide closed by %1") : mark("guide opened by %1"),
                 amount(plan, s.guide));
  if (!uses_stops(plan.way)) return guide;
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
  if (stage.kind == StageKind::spacer) {
    return locale.say("A spacer is not seen: straight cuts, no bevel.");
  }
  if (stage.layer == 1) return "";
  if (!stage.taped) {
    return locale.say("Cut by itself, from a blank of the same size; keep edge A the top edge.");
  }
  return locale.say(
      "Put all fallouts back. Tape this blank on behind, face down, centred: %1 of the top mat "
      "shows all around; letter its back anew, edge by edge as on the top mat. Guide, arm and rule "
      "go against the top mat's edges.",
      length(plan, stage.blank.left));
}

std::string duration_text(std::int64_t seconds, const Locale& locale) {
  const std::int64_t minutes = (seconds + 59) / 60;
  if (minutes < 60) return locale.say("%1 min", minutes);
  return locale.say("%1 h %2 min", minutes / 60, minutes % 60);
}

}  // namespace mullion
