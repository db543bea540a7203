#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

#include "engine/cuts/sheet/json.h"
#include "engine/job/read.h"
#include "mats.h"
#include "tests/how_many.h"

using namespace mullion;

TEST_CASE("random mats come off the ideal cutter exactly as they were meant") {
  const int count = test::how_many(400, 2000);
  std::mt19937 random(20260301);
  for (int i = 0; i < count; ++i) {
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    const PlanOptions options = mats::random_options(random, cutter);
    const auto plan = plan_cutting(mat, cutter, options);
    INFO("mat " << i);
    REQUIRE(plan);
    REQUIRE(mats::difference(mat, plan_to_json(*plan), mats::ideal(cutter),
                             static_cast<unsigned>(random())) == "");
  }
}

TEST_CASE("random jobs with shared windows, layers for some openings and spacers come out right") {
  const int count = test::how_many(150, 2000);
  std::mt19937 random(88);
  int played = 0, shared = 0, skipped = 0, spaced = 0;
  for (int i = 0; i < count; ++i) {
    const std::string xml = mats::random_job(random);
    const CutterProfile cutter = mats::random_cutter(random);
    const std::optional<Way> way = mats::random_way(random, cutter);
    const auto lie = static_cast<unsigned>(random());
    INFO(xml);
    const Job job = parse_job(xml, "random.xml").value();
    const auto layout = lay_out(job);
    if (!layout) continue;
    const auto mat = build_mat(job, *layout);
    if (!mat) continue;
    PlanOptions options;
    options.way = way;
    const auto plan = plan_cutting(*mat, cutter, options);
    if (!plan) continue;
    ++played;
    for (const MatLayer& layer : mat->layers) {
      spaced += layer.board.spacer ? 1 : 0;
      for (const Window& window : layer.windows) {
        shared += window.openings.size() > 1 ? 1 : 0;
        skipped += window.seen ? 0 : 1;
      }
    }
    REQUIRE(mats::difference(*mat, plan_to_json(*plan), mats::ideal(cutter), lie) == "");
  }
  CHECK(played > count / 2);
  CHECK(shared > 0);
  CHECK(skipped > 0);
  CHECK(spaced > 0);
}
