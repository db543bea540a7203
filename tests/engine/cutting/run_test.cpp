#include "engine/cutting/plan/run.h"

#include <catch2/catch.hpp>
#include <map>

#include "mats.h"

using namespace mullion;

TEST_CASE("a run of kinds with the same borders moves the guide once") {
  const Length b = inches(3);
  const std::vector<RunKind> kinds = {{"small", mats::even(inches(11), inches(14), b), 12},
                                      {"middle", mats::even(inches(16), inches(20), b), 8},
                                      {"large", mats::even(inches(20), inches(24), b), 4}};
  const CuttingRun run = plan_run(kinds, default_cutter()).value();
  REQUIRE(run.plans.size() == 3);
  CHECK(run.seconds < run.alone);
  CHECK(run.bound <= run.seconds);
  std::optional<Length> guide;
  int moves = 0;
  for (const RunStep& step : run.steps) {
    const Settings& s = run.plans[static_cast<std::size_t>(step.kind)]
                            .stages[static_cast<std::size_t>(step.stage)]
                            .set_ups[static_cast<std::size_t>(step.set_up)]
                            .settings;
    if (s.guide != guide) ++moves;
    guide = s.guide;
  }
  CHECK(moves == 1);
}

TEST_CASE("a run makes every set-up of every kind once, each kind's own in their order") {
  std::mt19937 random(5);
  std::vector<RunKind> kinds;
  for (int i = 0; i < 6; ++i) {
    kinds.push_back({"kind " + std::to_string(i), mats::random_mat(random), 3 + i});
  }
  const CuttingRun run = plan_run(kinds, default_cutter()).value();
  std::map<int, std::pair<int, int>> last;
  std::size_t set_ups = 0;
  for (const CuttingPlan& plan : run.plans) {
    for (const Stage& stage : plan.stages) set_ups += stage.set_ups.size();
  }
  CHECK(run.steps.size() == set_ups);
  for (const RunStep& step : run.steps) {
    const std::pair<int, int> now{step.stage, step.set_up};
    const auto [at, is_new] = last.emplace(step.kind, now);
    CHECK((is_new || at->second < now));
    at->second = now;
  }
}

TEST_CASE("a kind that the cutter cannot hold is named") {
  const auto run =
      plan_run({{"poster", mats::even(inches(70), inches(30), inches(3)), 1}}, default_cutter());
  REQUIRE_FALSE(run);
  CHECK(run.error()[0].message.substr(0, 8) == "poster: ");
}

TEST_CASE("a run of 500 mats of 10 kinds is planned, with a bound not above its time") {
  std::mt19937 random(9);
  std::vector<RunKind> kinds;
  for (int i = 0; i < 10; ++i) {
    kinds.push_back({"kind " + std::to_string(i), mats::random_mat(random), 50});
  }
  const CuttingRun run = plan_run(kinds, default_cutter()).value();
  CHECK(run.bound <= run.seconds);
}
