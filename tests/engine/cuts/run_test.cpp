#include "engine/cuts/run/run.h"

#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "engine/cuts/sheet/run_json.h"
#include "engine/cuts/sheet/run_text.h"
#include "mats.h"

using namespace mullion;
using nlohmann::json;

namespace {

std::vector<RunJob> random_jobs(std::mt19937& random, int count) {
  std::vector<RunJob> jobs;
  for (int i = 0; i < count; ++i) {
    jobs.push_back({"N-" + std::to_string(i), "", mats::random_mat(random), 1 + i});
  }
  return jobs;
}

// Three sizes with one border.
std::vector<RunJob> sizes() {
  const Length b = inches(3);
  return {{"N-1", "small", mats::even(inches(11), inches(14), b), 12},
          {"N-2", "middle", mats::even(inches(16), inches(20), b), 8},
          {"N-3", "large", mats::even(inches(20), inches(24), b), 4}};
}

// The kind's plan with every setting taken from the run's steps, and nothing from the plan.
json plan_by_steps(const json& run, std::size_t kind) {
  json plan = run["kinds"][kind]["plan"];
  for (json& stage : plan["stages"]) {
    for (json& set_up : stage["set_ups"]) {
      for (const char* scale : {"guide", "block", "near_stop", "far_stop", "arm_block"})
        set_up[scale] = {};
    }
  }
  for (const json& step : run["steps"]) {
    for (const json& cut : step["cut"]) {
      if (cut["kind"] != run["kinds"][kind]["kind"] || cut["set_up"].is_null()) continue;
      json& stage = plan["stages"][cut["stage"].get<std::size_t>() - 1];
      for (json& set_up : stage["set_ups"]) {
        if (set_up["number"] != cut["set_up"]) continue;
        for (const char* scale : {"guide", "block", "near_stop", "far_stop", "arm_block"}) {
          set_up[scale] = step[scale];
        }
      }
    }
  }
  return plan;
}

}  // namespace

TEST_CASE("a run of kinds with the same borders moves the guide once") {
  const CuttingRun run = plan_run(sizes(), default_cutter()).value();
  REQUIRE(run.kinds.size() == 3);
  CHECK(mats_in(run) == 24);
  CHECK(run.seconds < run.alone);
  CHECK(run.bound <= run.seconds);
  int guide = 0, near_stop = 0;
  for (const RunStep& step : run.steps) {
    guide += step.guide_moves ? 1 : 0;
    near_stop += step.near_stop_moves ? 1 : 0;
  }
  CHECK(guide == 1);
  CHECK(near_stop == 1);
}

TEST_CASE("mats of different orders that are cut alike make one kind, and share its steps") {
  const Mat mat = mats::even(inches(16), inches(20), inches(3));
  Mat other = mat;
  other.layers[0].board.board = "Slate";
  const std::vector<RunJob> jobs = {
      {"N-1", "", mat, 12}, {"N-2", "", other, 5}, {"N-3", "", mat, 28}};
  const CuttingRun run = plan_run(jobs, default_cutter()).value();
  REQUIRE(run.kinds.size() == 2);
  REQUIRE(run.kinds[0].shares.size() == 2);
  CHECK(run.kinds[0].shares[1].order == "N-3");
  CHECK(run.kinds[0].plan.quantity == 40);
  // Another board, the same settings: both kinds are cut before anything is moved.
  REQUIRE(run.steps.size() == 2);
  for (const RunStep& step : run.steps) CHECK(step.work.size() == 2);
}

TEST_CASE("blanks of one size are cut with one setting of the arm, whatever they are for") {
  Mat other = mats::even(inches(16), inches(20), inches(2));
  const std::vector<RunJob> jobs = {{"N-1", "", mats::even(inches(16), inches(20), inches(3)), 3},
                                    {"N-2", "", other, 2}};
  const CuttingRun run = plan_run(jobs, default_cutter()).value();
  REQUIRE(run.blanks.size() == 2);
  CHECK(run.blanks[0].strip);
  CHECK(run.blanks[0].size == inches(16));
  CHECK(run.blanks[0].shares.size() == 2);
  const std::string text = run_to_text(run);
  CHECK(text.find("arm stop 20 in: then cut it off the strip: 3 for kind 1 (layer 1); 2 for kind 2 "
                  "(layer 1)") != std::string::npos);
}

TEST_CASE("every mat of a run comes off the ideal cutter exactly by the run's own steps") {
  std::mt19937 random(23);
  for (int round = 0; round < 20; ++round) {
    const std::vector<RunJob> jobs = random_jobs(random, 5);
    const CutterProfile cutter = mats::random_cutter(random);
    const CuttingRun run = plan_run(jobs, cutter).value();
    const json printed = json::parse(run_to_json(run));
    REQUIRE(run.kinds.size() == jobs.size());
    for (std::size_t kind = 0; kind < jobs.size(); ++kind) {
      INFO("round " << round << ", kind " << kind);
      CHECK(mats::difference(jobs[kind].mat, plan_by_steps(printed, kind).dump(),
                             mats::ideal(cutter)) == "");
    }
  }
}

TEST_CASE("what a step moves is what its settings differ by from what the scales show") {
  std::mt19937 random(29);
  const CuttingRun run = plan_run(random_jobs(random, 6), default_cutter()).value();
  const json printed = json::parse(run_to_json(run));
  // What a step does not set is pushed out of the way.
  json shown = {
      {"guide", {}}, {"block", {}}, {"near_stop", {}}, {"far_stop", {}}, {"arm_block", {}}};
  for (const json& step : printed["steps"]) {
    std::set<std::string> moved, expected;
    for (const json& move : step["moves"]) moved.insert(move.get<std::string>());
    for (const auto& [scale, name] : std::map<std::string, std::string>{
             {"guide", "guide"}, {"near_stop", "near stop"}, {"far_stop", "far stop"}}) {
      if (!step[scale].is_null() && shown[scale] != step[scale]) expected.insert(name);
    }
    const bool block = !step["guide"].is_null() && shown["block"] != step["block"];
    if (block || shown["arm_block"] != step["arm_block"]) expected.insert("spacers");
    CHECK(moved == expected);
    for (auto& [scale, now] : shown.items()) now = step[scale];
  }
}

TEST_CASE("a run makes every set-up of every kind once, each kind's own in their order") {
  std::mt19937 random(5);
  const CuttingRun run = plan_run(random_jobs(random, 6), default_cutter()).value();
  std::map<int, std::pair<int, int>> last;
  std::size_t set_ups = 0, made = 0;
  for (const RunKind& kind : run.kinds) {
    for (const Stage& stage : kind.plan.stages) set_ups += stage.set_ups.size();
  }
  for (const RunStep& step : run.steps) {
    for (const RunWork& work : step.work) {
      ++made;
      const std::pair<int, int> now{work.stage, work.set_up};
      const auto [at, is_new] = last.emplace(work.kind, now);
      CHECK((is_new || at->second < now));
      at->second = now;
    }
  }
  CHECK(made == set_ups);
}

TEST_CASE("a kind that the cutter cannot hold is named by its order") {
  const auto run = plan_run({{"N-7", "poster", mats::even(inches(70), inches(30), inches(3)), 1}},
                            default_cutter());
  REQUIRE_FALSE(run);
  CHECK(run.error()[0].message.substr(0, 5) == "N-7: ");
}

TEST_CASE("a run of no jobs has no steps") {
  CHECK(plan_run({}, default_cutter()).value().steps.empty());
}
