#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/cuts/sheet/json.h"
#include "mats.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

// Half the time the plan's own choice.
std::optional<Way> random_way(std::mt19937& random, const CutterProfile& cutter) {
  const Way way = all_ways[random() % std::size(all_ways)];
  if (random() % 2 == 0) return std::nullopt;
  const int needed = way < Way::one_stop ? 0 : way == Way::one_stop ? 1 : 2;
  if (stops(cutter) < needed) return std::nullopt;
  if (!cutter.guide && (way == Way::guide_marked || way == Way::gauges)) return std::nullopt;
  return way;
}

}  // namespace

TEST_CASE("random mats come off the ideal cutter exactly as they were meant") {
  const int count = test::how_many(400, 2000);
  std::mt19937 random(20260301);
  for (int i = 0; i < count; ++i) {
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    PlanOptions options;
    options.stacked = random() % 2 == 0;
    options.quantity = random() % 3 == 0 ? 12 : 1;
    options.way = random_way(random, cutter);
    const auto plan = plan_cutting(mat, cutter, options);
    INFO("mat " << i);
    REQUIRE(plan);
    REQUIRE(mats::difference(mat, plan_to_json(*plan), mats::ideal(cutter),
                             static_cast<unsigned>(random())) == "");
  }
}
