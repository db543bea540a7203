// A simulated machine whose scales, leads and blade err at random is calibrated by what its test
// cuts show; its mats must then come out right.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/cuts/cutter/check.h"
#include "engine/cuts/sheet/json.h"
#include "mats.h"
#include "tests/how_many.h"

using namespace mullion;
using nlohmann::json;

namespace {

Length about(std::mt19937& random, int most_ticks) {
  return Length::from_ticks(static_cast<int>(random() % unsigned(2 * most_ticks + 1)) - most_ticks);
}

// What the machine really is: up to 2 mm off on every scale, leads from -1 to 4 mm.
simulator::Cutter real_machine(std::mt19937& random, const CutterProfile& believed) {
  simulator::Cutter out = mats::ideal(believed);
  out.guide_zero = about(random, 3200);
  out.near_zero = about(random, 3200);
  out.far_zero = about(random, 3200);
  out.arm_zero = about(random, 3200);
  out.mark_lead = Length::from_ticks(2400) + about(random, 4000);
  out.start_lead = Length::from_ticks(2400) + about(random, 4000);
  out.line_from_rail = about(random, 12000);
  return out;
}

// The blade needs the bevel's run past the lines, and the same where it starts.
TestMeasures shown_by(const simulator::Cutter& machine, const CutterProfile& believed,
                      Length thickness) {
  const TestCut test = test_cut(believed, thickness);
  const Length near_lead = machine.pulled ? machine.mark_lead : machine.start_lead;
  const Length far_lead = machine.pulled ? machine.start_lead : machine.mark_lead;
  TestMeasures out;
  out.thickness = thickness;
  out.line = out.line_far = *test.guide - machine.guide_zero;
  out.near_end = *test.near_stop - machine.near_zero - near_lead;
  out.far_end = *test.far_stop - machine.far_zero + far_lead;
  out.mark = machine.mark_lead;
  out.start_mark = machine.start_lead;
  out.corner = test.mark_past + machine.mark_lead - thickness;
  out.start_corner = test.start_mark_past + machine.start_lead - thickness;
  out.rail = machine.line_from_rail;
  out.piece = test.arm - machine.arm_zero - half_rounded_down(machine.kerf);
  return out;
}

CutterProfile believed_cutter(std::mt19937& random, bool metric) {
  CutterProfile out = metric ? *generic_cutter("metric-bench") : default_cutter();
  out.side = random() % 2 == 0 ? GuideSide::left : GuideSide::right;
  if (random() % 3 == 0) out.lean = BladeLean::from_guide;
  if (random() % 3 == 0) out.stroke = Stroke::push;
  out.guide->most = inches(12);
  for (OverCut& entry : out.over_cuts) entry.distance += Length::from_ticks(random() % 2000);
  return out;
}

Mat two_windows(std::mt19937& random) {
  const Length b = inches(2) + about(random, 20000), far = inches(12);
  Mat mat = mats::single(inches(22), inches(14), {{b, b, far, b}, {far, b, b, inches(3)}});
  mats::set_thickness(mat.layers.front(), Length::from_ticks(1500 + random() % 1000));
  return mat;
}

std::optional<Way> any_way(std::mt19937& random) {
  const Way way = all_ways[random() % std::size(all_ways)];
  return random() % 3 == 0 ? std::nullopt : std::optional(way);
}

// The least distance to a corner of the other window that is farthest, in ticks.
std::int64_t farthest_corner(const std::vector<simulator::Polygon>& cut,
                             const std::vector<simulator::Polygon>& meant) {
  std::int64_t farthest = cut.size() == meant.size() ? 0 : INT64_MAX;
  for (const auto& window : meant) {
    for (const simulator::Point& corner : window) {
      std::int64_t nearest = INT64_MAX;
      for (const auto& other : cut) {
        for (const simulator::Point& p : other) {
          nearest = std::min(nearest, std::max(std::abs((p.x - corner.x).ticks()),
                                               std::abs((p.y - corner.y).ticks())));
        }
      }
      farthest = std::max(farthest, nearest);
    }
  }
  return farthest;
}

}  // namespace

TEST_CASE("a machine that errs at random is calibrated by its test cuts to cut exactly") {
  const int count = test::how_many(60, 600);
  std::mt19937 random(1717);
  int spoilt_before = 0;
  for (int i = 0; i < count; ++i) {
    INFO("machine " << i);
    const CutterProfile believed = believed_cutter(random, i % 2 == 0);
    const simulator::Cutter machine = real_machine(random, believed);
    const Mat mat = two_windows(random);
    const Length thickness = mat.layers.front().board.thickness;
    const auto found = measure_up(believed, shown_by(machine, believed, thickness));
    REQUIRE(found);
    CHECK(found->turn.empty());
    PlanOptions options;
    options.way = any_way(random);
    const auto plan = plan_cutting(mat, found->cutter, options);
    REQUIRE(plan);
    CHECK(mats::difference(mat, plan_to_json(*plan), machine) == "");
    const auto before = plan_cutting(mat, believed, options);
    spoilt_before += mats::difference(mat, plan_to_json(*before), machine) == "" ? 0 : 1;
  }
  CHECK(spoilt_before == count);
}

// Read with a rule to 0.05 mm, and set as printed, to 0.1 mm: the sum stays below 0.1 mm.
TEST_CASE(
    "with what a rule shows and a scale takes, mats come out within a tenth of a millimetre") {
  const int count = test::how_many(60, 600);
  std::mt19937 random(1718);
  const auto read = [](std::optional<Length>& measure) {
    *measure = round_to_multiple(*measure, Length::from_ticks(80));
  };
  for (int i = 0; i < count; ++i) {
    INFO("machine " << i);
    const CutterProfile believed = believed_cutter(random, true);
    const simulator::Cutter machine = real_machine(random, believed);
    const Mat mat = two_windows(random);
    TestMeasures measures = shown_by(machine, believed, mat.layers.front().board.thickness);
    for (auto* measure :
         {&measures.line, &measures.line_far, &measures.near_end, &measures.far_end, &measures.mark,
          &measures.start_mark, &measures.corner, &measures.start_corner, &measures.rail}) {
      read(*measure);
    }
    const auto found = measure_up(believed, measures);
    REQUIRE(found);
    PlanOptions options;
    options.way = Way::two_stops;
    json plan = json::parse(plan_to_json(plan_cutting(mat, found->cutter, options).value()));
    for (json& set_up : plan["stages"][0]["set_ups"]) {
      for (const char* scale : {"guide", "near_stop", "far_stop"}) {
        if (!set_up[scale].is_null()) set_up[scale]["rounded_by"] = "0 mm";
      }
    }
    const simulator::Outcome outcome = simulator::play(plan.dump(), machine);
    REQUIRE(outcome.layers.size() == 1);
    CHECK(farthest_corner(outcome.layers[0].back, mats::backs(mat.layers[0])) <= 160);
  }
}
