#include "engine/cuts/sheet/dials.h"

#include "engine/cuts/sheet/scale_text.h"

namespace mullion {
namespace {

Dial dial(const char* name, const char* unset, const ToldPlan& plan,
          const std::optional<Length>& place, Length zero, bool moves) {
  const Locale& locale = plan.locale;
  if (!place) return {locale.say(name), locale.say(unset), false, false};
  return {locale.say(name), scale_text(*place, zero, plan.cutter.scale, locale).shows, true, moves};
}

Length zero_of(const std::optional<StopScale>& stop) {
  return stop ? stop->zero : Length();
}

}  // namespace

std::vector<Dial> dials_of(const ToldPlan& plan, const Settings& settings, const Settings& shown) {
  const CutterProfile& cutter = plan.cutter;
  const bool guide_moves = settings.guide != shown.guide || settings.block != shown.block;
  std::vector<Dial> out = {dial(mark("guide"), mark("freehand"), plan, settings.guide,
                                cutter.guide ? cutter.guide->zero : Length(), guide_moves)};
  if (plan.way < Way::one_stop) return out;
  // One stop is that at which a cut ends.
  const bool both = plan.way > Way::one_stop;
  const bool near = cutter.stroke == Stroke::pull ? !!cutter.near_stop : !cutter.far_stop;
  if (both || near) {
    out.push_back(dial(mark("near stop"), mark("by eye"), plan, settings.near_stop,
                       zero_of(cutter.near_stop), settings.near_stop != shown.near_stop));
  }
  if (both || !near) {
    out.push_back(dial(mark("far stop"), mark("by eye"), plan, settings.far_stop,
                       zero_of(cutter.far_stop), settings.far_stop != shown.far_stop));
  }
  return out;
}

}  // namespace mullion
