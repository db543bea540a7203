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
};

}  // namespace

std::string sentence_of(const PlanNote& note, Unit unit, const Locale& locale) {
  return std::visit(NoteWords{unit, locale}, note);
}

std::optional<std::string> blade_caution(const ToldPlan& plan) {
  for (const Stage& stage : plan.stages) {
    if (stage.run == stage.thickness) continue;
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
