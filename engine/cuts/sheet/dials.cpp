#include "engine/cuts/sheet/dials.h"

#include "engine/cuts/sheet/scale_text.h"

namespace mullion {
namespace {

Dial dial(const char* name, const char* unset, const ToldPlan& plan,
          const std::optional<Length>& place, Length zero, bool moves) {
  const Locale& locale = plan.locale;
  if (!place) return {locale.say(name), locale.say(unset), false, moves};
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

namespace {

Dial block_dial(const char* name, const ToldPlan& plan, const std::optional<Length>& width,
                bool moves) {
  const Locale& locale = plan.locale;
  if (!width) return {locale.say(name), locale.say_in("block", "none"), false, moves};
  return {locale.say(name), rule_text(*width, plan.cutter.scale, locale), true, moves};
}

std::optional<Length> width_of(const std::optional<Block>& block) {
  return block ? std::optional(block->width) : std::nullopt;
}

}  // namespace

std::vector<Dial> block_dials_of(const ToldPlan& plan, const Settings& settings,
                                 const Settings& shown) {
  std::vector<Dial> out;
  const auto& known = settings.block ? settings.block : shown.block;
  if (settings.block || (shown.block && settings.guide)) {
    out.push_back(
        block_dial(known->outside ? mark("block outside the guide") : mark("block at the guide"),
                   plan, width_of(settings.block), settings.block != shown.block));
  }
  if (settings.arm_block || shown.arm_block) {
    out.push_back(block_dial(mark("block at the arm"), plan, settings.arm_block,
                             settings.arm_block != shown.arm_block));
  }
  return out;
}

Dial blank_dial(const CutterProfile& cutter, const StraightCut& side, const Locale& locale) {
  if (!side.by_stop) {
    return {locale.say("pencil line"), rule_text(side.size, cutter.scale, locale)};
  }
  return {locale.say("arm stop"), scale_text(side.size + half_rounded_down(cutter.kerf),
                                             cutter.arm_zero, cutter.scale, locale)
                                      .shows};
}

}  // namespace mullion
