#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/cuts/sheet/json.h"
#include "mats.h"
#include "tests/how_many.h"

using namespace mullion;

TEST_CASE("random mats come off the ideal cutter exactly as they were meant") {
  const int count = test::how_many(400, 2000);
  std::mt19937 random(20260301);
  for (int i = 0; i < count; ++i) {
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    PlanOptions options;
    options.stacked = random() % 2 == 0;
    options.quantity = random() % 3 == 0 ? 12 : 1;
    const int most_way = stops(cutter);
    if (random() % 2 == 0) options.way = static_cast<Way>(random() % unsigned(most_way + 1));
    const auto plan = plan_cutting(mat, cutter, options);
    INFO("mat " << i);
    REQUIRE(plan);
    REQUIRE(mats::difference(mat, plan_to_json(*plan), mats::ideal(cutter)) == "");
  }
}
