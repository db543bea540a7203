#include "engine/cuts/plan/settings.h"

#include <algorithm>

namespace mullion {
namespace {

struct Round {
  Length step;         // round figures are its multiples
  Length least_block;  // a narrower strip is awkward to hold against the guide
};

Round round_for(Unit unit) {
  return unit == Unit::inch ? Round{inches(1), inches(1)} : Round{millimetres(10), millimetres(20)};
}

Length round_up(Length a, Length step) {
  const std::int64_t rest = a.ticks() % step.ticks();
  return rest == 0 ? a : a + step - Length::from_ticks(rest);
}

Length round_down(Length a, Length step) {
  return a - Length::from_ticks(a.ticks() % step.ticks());
}

bool reaches(const GuideScale& guide, Length distance) {
  return distance >= guide.least && distance <= guide.most && distance + guide.zero >= Length();
}

std::optional<GuideSetting> inside_block(const CutterProfile& cutter, Length distance) {
  const Round round = round_for(cutter.scale.unit);
  const Length least = std::max(cutter.guide->least, distance + round.least_block);
  const Length guide = round_up(least, round.step);
  if (!reaches(*cutter.guide, guide)) return std::nullopt;
  return GuideSetting{guide, Block{guide - distance, false}};
}

}  // namespace

std::optional<GuideSetting> outside_block(const CutterProfile& cutter, Length distance) {
  if (!cutter.guide) return std::nullopt;
  const Round round = round_for(cutter.scale.unit);
  // One step short of the guide's reach, so that under-mats find the guide within it.
  const Length most = std::min(cutter.guide->most - round.step, distance - round.least_block);
  const Length guide = round_down(most, round.step);
  if (!reaches(*cutter.guide, guide)) return std::nullopt;
  return GuideSetting{guide, Block{distance - guide, true}};
}

std::optional<GuideSetting> guide_with(const CutterProfile& cutter, Length distance,
                                       const std::optional<Block>& block) {
  if (!cutter.guide) return std::nullopt;
  Length guide = distance;
  if (block) guide += block->outside ? -block->width : block->width;
  if (!reaches(*cutter.guide, guide)) return std::nullopt;
  return GuideSetting{guide, block};
}

std::optional<GuideSetting> guide_for(const CutterProfile& cutter, Length distance) {
  if (!cutter.guide) return std::nullopt;
  if (reaches(*cutter.guide, distance)) return GuideSetting{distance, std::nullopt};
  if (distance <= cutter.guide->most) return inside_block(cutter, distance);
  if (cutter.guide->board_over_bar) return outside_block(cutter, distance);
  return std::nullopt;
}

std::optional<Length> stop_for(const std::optional<StopScale>& stop, Length place) {
  if (!stop || place < stop->least || place > stop->most) return std::nullopt;
  if (place + stop->zero < Length()) return std::nullopt;
  return place;
}

Settings settings_at(const GuideSetting& setting) {
  Settings settings;
  settings.guide = setting.guide;
  settings.block = setting.block;
  return settings;
}

Length setting_step(const Scale& scale) {
  const Length of_a_rule = scale.unit == Unit::inch ? sixty_fourths(1) : Length::from_ticks(160);
  return std::min(of_a_rule, scale.increment);
}

Length shown_on(const Scale& scale, Length true_distance, Length zero) {
  return round_to_multiple(true_distance + zero, setting_step(scale));
}

}  // namespace mullion
