#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "engine/job/read.h"
#include "engine/layout/arrangement.h"
#include "tests/bench/grid_job.h"
#include "tests/engine/layout/closing.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/random_job.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/how_many.h"
#include "tests/oracle/linear_program.h"

using namespace mullion;

TEST_CASE(
    "neither GLPK nor Clp finds a better layout for several hundred random jobs, or any layout "
    "where we find none") {
  std::mt19937 random(41);
  int solved = 0, refused = 0;
  for (int i = 0; i < 400; ++i) {
    const std::string lines = test::random_job(random, 7);
    INFO(lines);
    const layout::Model model =
        layout::build_model(test::job_of(lines), {inches(2), inches(1), solver::Rational(1)});
    const auto solution = solver::solve(model.system);
    ++(solution ? solved : refused);
    for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
      REQUIRE(oracle::is_feasible(model.system, code) == solution.has_value());
      if (solution) CHECK(oracle::better_than(model.system, *solution, code) == "");
    }
  }
  CHECK(solved > 200);
  CHECK(refused > 20);
}

TEST_CASE("neither GLPK nor Clp finds a better layout for mats in which most gaps give way") {
  for (const int openings : {12, 24, 50, 100}) {
    Job job = parse_job(bench::grid_job(openings), "grid.xml").value();
    const Layout free = lay_out(job).value();
    job.outer_width = free.width - sixty_fourths(20);
    job.outer_height = free.height - sixty_fourths(28);
    job.borders.least = inches(3);
    const layout::Model model =
        layout::build_model(job, {inches(3), inches(1), solver::Rational(1)});
    const auto solution = solver::solve(model.system).value();
    for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
      CHECK(oracle::better_than(model.system, solution, code) == "");
    }
  }
}

TEST_CASE("neither GLPK nor Clp finds a better layout at any level for random jobs of every kind") {
  std::mt19937 random(47);
  int solved = 0, refused = 0;
  std::map<int, int> jobs_with;  // by level
  for (int i = 0; i < 300; ++i) {
    const test::WildJob wild = test::wild_job(random, 5);
    INFO(wild.attributes << wild.lines);
    const layout::Model model =
        layout::build_model(wild.job(), {inches(2), inches(1), solver::Rational(1)});
    const auto solution = solver::solve(model.system);
    ++(solution ? solved : refused);
    std::set<int> present;
    for (const solver::Constraint& rule : model.system.constraints()) present.insert(rule.level);
    if (solution) {
      for (const int level : present) ++jobs_with[level];
    }
    for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
      REQUIRE(oracle::is_feasible(model.system, code) == solution.has_value());
      if (solution) CHECK(oracle::better_than(model.system, *solution, code) == "");
    }
  }
  CHECK(solved > 100);
  CHECK(refused > 50);
  for (int level = layout::level::strong_rule; level <= layout::level::free_sizes; ++level) {
    INFO(level);
    // Nothing is wanted at this level before sizes come to the increment.
    if (level != layout::level::remainder) CHECK(jobs_with[level] >= 3);
  }
}

TEST_CASE(
    "the parts of random jobs of every kind add up, and are read off the rule where "
    "what is stated is") {
  const int jobs = test::how_many(500, 2000);
  std::mt19937 random(43);
  int laid = 0, on_the_rule = 0;
  while (laid < jobs) {
    const test::WildJob wild = test::wild_job(random, 7);
    INFO(wild.attributes << wild.lines);
    const Job job = wild.job();
    const auto layout = lay_out(job);
    if (!layout) continue;
    ++laid;
    CHECK(test::what_does_not_close(job, *layout) == "");
    const std::string off = test::what_is_off_the_rule(job, *layout);
    if (wild.is_on_the_rule) {
      ++on_the_rule;
      CHECK(off == "");
    }
    // A gap beside an opening that is between steps itself needs no word.
    const bool is_edge_off =
        off.find("width") != std::string::npos || off.find("height") != std::string::npos ||
        off.find("border") != std::string::npos || off.find("edge") != std::string::npos;
    if (is_edge_off) CHECK(!layout->notes.empty());
  }
  CHECK(on_the_rule > jobs * 2 / 5);
}

TEST_CASE("a job three times as large, increment included, has a layout three times as large") {
  std::mt19937 random(53);
  const solver::Rational factor(3);
  int laid = 0;
  for (int i = 0; i < 500; ++i) {
    const std::string lines = test::random_job(random, 6);
    INFO(lines);
    const Job job = test::job_of(lines);
    const auto small =
        layout::arrange(layout::build_model(job, {inches(2), inches(1), solver::Rational(1)}));
    if (!small) continue;
    ++laid;
    solver::System system;
    for (int v = 0; v < small->model.system.variable_count(); ++v) system.add_variable();
    for (solver::Constraint rule : small->model.system.constraints()) {
      rule.form = solver::Linear(rule.form.terms(), rule.form.constant() * factor);
      system.add(std::move(rule));
    }
    const auto large = solver::solve(system);
    REQUIRE(large.has_value());
    const auto& measures = small->model.measures;
    const solver::Rational step(job.scale.increment.ticks());
    const auto snapped = solver::snap(small->model.system, small->solution, measures, step);
    const auto large_snapped = solver::snap(system, *large, measures, step * factor);
    for (std::size_t v = 0; v < large->values.size(); ++v) {
      CHECK(large->values[v] == small->solution.values[v] * factor);
      CHECK(large_snapped->values[v] == snapped->values[v] * factor);
    }
  }
  CHECK(laid > 250);
}
