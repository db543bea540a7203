#include "engine/cuts/cutter/profile.h"

#include <algorithm>

#include "engine/locale/locale.h"

namespace mullion {
namespace {

CutterProfile bench() {
  CutterProfile out;
  out.id = "bench";
  out.name = "Bench cutter with a guide and two stops";
  out.scale = {Unit::inch, sixty_fourths(4)};
  out.longest_cut = inches(48);
  out.widest_board = inches(60);
  out.reach = inches(48);
  out.thickest_board = sixty_fourths(24);
  out.deepest_cut = sixty_fourths(8);
  out.deepest_in_two = sixty_fourths(12);
  out.guide = GuideScale{inches(1), inches(8), Length(), false};
  out.near_stop = StopScale{inches(1), inches(30), Length()};
  out.far_stop = StopScale{inches(3), inches(48), Length()};
  out.arm_length = inches(32);
  out.mark_lead = sixty_fourths(4);
  out.over_cuts = {{sixty_fourths(4), sixty_fourths(4)}, {sixty_fourths(8), sixty_fourths(8)}};
  return out;
}

CutterProfile plain_bench() {
  CutterProfile out = bench();
  out.id = "plain-bench";
  out.name = "Bench cutter without guide or stops";
  out.guide.reset();
  out.near_stop.reset();
  out.far_stop.reset();
  return out;
}

CutterProfile metric_bench() {
  CutterProfile out;
  out.id = "metric-bench";
  out.name = "Bench cutter with metric scales";
  out.scale = {Unit::millimetre, millimetres(1)};
  out.longest_cut = millimetres(1200);
  out.widest_board = millimetres(1550);
  out.reach = millimetres(1200);
  out.thickest_board = millimetres(10);
  out.deepest_cut = millimetres(3);
  out.deepest_in_two = millimetres(5);
  out.guide = GuideScale{millimetres(20), millimetres(200), Length(), false};
  out.near_stop = StopScale{millimetres(20), millimetres(800), Length()};
  out.far_stop = StopScale{millimetres(80), millimetres(1200), Length()};
  out.arm_length = millimetres(800);
  out.mark_lead = millimetres(2);
  out.over_cuts = {{millimetres(1), millimetres(1)}, {millimetres(4), millimetres(4)}};
  return out;
}

Length in_proportion(const OverCut& to, Length thickness) {
  __extension__ using Wide = __int128;
  const Wide product = static_cast<Wide>(to.distance.ticks()) * thickness.ticks();
  const Wide per = to.thickness.ticks();
  const bool up = product > 0 && product % per != 0;
  return Length::from_ticks(static_cast<std::int64_t>(product / per + (up ? 1 : 0)));
}

Length at_45_degrees(const CutterProfile& cutter, Length thickness) {
  const std::vector<OverCut>& table = cutter.over_cuts;
  if (thickness <= table.front().thickness) return in_proportion(table.front(), thickness);
  for (std::size_t i = 1; i < table.size(); ++i) {
    if (thickness > table[i].thickness) continue;
    const OverCut step{table[i].thickness - table[i - 1].thickness,
                       table[i].distance - table[i - 1].distance};
    return table[i - 1].distance + in_proportion(step, thickness - table[i - 1].thickness);
  }
  return in_proportion(table.back(), thickness);
}

// Whether a slanting way through the board is no longer than one at 45 degrees through `deepest`.
bool within_depth(Length thickness, Length run, Length deepest) {
  __extension__ using Wide = __int128;
  const auto square = [](Length a) { return static_cast<Wide>(a.ticks()) * a.ticks(); };
  return square(thickness) + square(run) <= 2 * square(deepest);
}

}  // namespace

Length over_cut(const CutterProfile& cutter, Length thickness, Length run) {
  return std::max(Length(), run + at_45_degrees(cutter, thickness) - thickness);
}

Length start_lead(const CutterProfile& cutter) {
  return cutter.own_start_lead.value_or(cutter.mark_lead);
}

int passes(const CutterProfile& cutter, Length thickness, Length run) {
  if (!cutter.deepest_cut || within_depth(thickness, run, *cutter.deepest_cut)) return 1;
  const Length in_two = cutter.deepest_in_two.value_or(*cutter.deepest_cut);
  return within_depth(thickness, run, in_two) ? 2 : 0;
}

const char* name_of(Way way) {
  constexpr const char* names[] = {mark("pencil lines"),
                                   mark("lines drawn along the guide"),
                                   mark("a taped template"),
                                   mark("one stop"),
                                   mark("two stops"),
                                   mark("two stops and blocks at the arm"),
                                   mark("two stops and gauge pieces")};
  return names[static_cast<int>(way)];
}

const char* word_of(Way way) {
  constexpr const char* words[] = {"pencil",    "guide-lines", "template", "one-stop",
                                   "two-stops", "stop-blocks", "gauges"};
  return words[static_cast<int>(way)];
}

int stops(const CutterProfile& cutter) {
  return (cutter.near_stop ? 1 : 0) + (cutter.far_stop ? 1 : 0);
}

const std::vector<CutterProfile>& generic_cutters() {
  static const std::vector<CutterProfile> all = {bench(), plain_bench(), metric_bench()};
  return all;
}

const CutterProfile* generic_cutter(std::string_view id) {
  for (const CutterProfile& cutter : generic_cutters()) {
    if (cutter.id == id) return &cutter;
  }
  return nullptr;
}

const CutterProfile& default_cutter() {
  return generic_cutters().front();
}

const CutterProfile& generic_cutter_for(Unit unit) {
  return unit == Unit::inch ? default_cutter() : *generic_cutter("metric-bench");
}

}  // namespace mullion
