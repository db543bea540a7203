#include "engine/cuts/sheet/cautions.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mullion {
namespace {

bool has_curves(const ToldPlan& plan) {
  return std::any_of(plan.stages.begin(), plan.stages.end(),
                     [](const Stage& stage) { return !stage.curves.empty(); });
}

struct NoteWords {
  Unit unit;
  const Locale& locale;

  std::string operator()(const UnevenShift& note) const {
    return locale.say(
        "Layer %1 is not set off by one amount from the layer above it: its settings are given cut "
        "by cut.",
        note.layer);
  }
  std::string operator()(const BeyondGuide& note) const {
    return locale.plural(note.lines,
                         "%1 line lies beyond the guide's reach of %2: cut freehand against the "
                         "rail on a pencil line.",
                         "%1 lines lie beyond the guide's reach of %2: cut freehand against the "
                         "rail on a pencil line.",
                         locale.exact_length(note.reach, unit));
  }
  std::string operator()(const LongBlank& note) const {
    return locale.say(
        "A side of the blank, %1 long, is longer than the cutter's longest cut: have the blank cut "
        "to size.",
        locale.exact_length(note.side, unit));
  }
  std::string operator()(const RoundedSettings& note) const {
    const Length most = Length::from_ticks((note.most.ticks() + 15) / 16 * 16);
    const std::string step = locale.exact_length(note.step, unit);
    const std::string off = locale.exact_length(most, Unit::millimetre);
    if ((note.job == Unit::inch) == (unit == Unit::inch)) {
      return locale.say("Settings are rounded to %1: at most %2 off.", step, off);
    }
    return locale.say(
        "The job is measured in other units: settings are converted to the cutter's and rounded to "
        "%1, at most %2 off.",
        step, off);
  }
  std::string operator()(const ReachUnknown& note) const {
    return locale.say(
        "How far the rail reaches from the arm is not measured: make sure that the head gets %1 "
        "from it.",
        locale.exact_length(to_finest_mark(note.farthest, unit), unit));
  }
  std::string operator()(const DepthUnknown& note) const {
    return locale.say(
        "Layer %1 is thicker than any board that the cutter's profile knows: find out on scrap "
        "whether the blade cuts it through, and how far past the lines it must go.",
        note.layer);
  }
  std::string operator()(const RailLineUnknown& note) const {
    return locale.plural(
        note.lines,
        "%1 line is brought under the blade's point: where the blade cuts beside the rail's edge "
        "is "
        "not measured.",
        "%1 lines are brought under the blade's point: where the blade cuts beside the rail's edge "
        "is not measured.");
  }
  std::string operator()(const TwoPasses& note) const {
    return locale.say(
        "Layer %1 is cut in two passes with the same settings: the first with the blade at half "
        "the "
        "depth.",
        note.layer);
  }
};

}  // namespace

std::string sentence_of(const PlanNote& note, Unit unit, const Locale& locale) {
  return std::visit(NoteWords{unit, locale}, note);
}

std::optional<std::string> blade_caution(const ToldPlan& plan) {
  for (const Stage& stage : plan.stages) {
    if (stage.run == stage.thickness || stage.kind == StageKind::spacer) continue;
    const double degrees = std::atan2(static_cast<double>(stage.thickness.ticks()),
                                      static_cast<double>(stage.run.ticks())) *
                           180 / std::numbers::pi;
    return plan.locale.say(
        "Set the blade to %1 degrees, not the usual 45: the settings are for that.",
        std::int64_t{std::lround(degrees)});
  }
  return std::nullopt;
}

std::vector<std::string> cautions(const ToldPlan& plan) {
  const Locale& locale = plan.locale;
  std::vector<std::string> out;
  for (const PlanNote& note : plan.notes) {
    out.push_back(sentence_of(note, plan.cutter.scale.unit, locale));
  }
  if (plan.stacked) {
    out.push_back(locale.say(
        "Set the blade's depth for one board; fallouts stay taped in under the next one."));
  }
  if (auto blade = blade_caution(plan)) out.push_back(std::move(*blade));
  if (has_curves(plan)) {
    out.push_back(locale.say(
        "Cut curves last, after a trial on scrap: oval cutters differ in what they show."));
  }
  out.push_back(locale.say("Fresh blade; test cut on scrap of the same board first."));
  out.push_back(locale.say("Bevel cuts over a backing sheet, straight cuts without it."));
  out.push_back(
      locale.say("Keep the hand on the rail behind the blade; blade out before you let go."));
  out.push_back(locale.say("All fallouts stay in until the layer is done."));
  out.push_back(locale.say("Where the maker of your cutter says otherwise, the maker is right."));
  return out;
}

}  // namespace mullion
