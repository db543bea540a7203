#include <algorithm>
#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "engine/layout/arrangement.h"
#include "tests/bench/grid_job.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/random_job.h"
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

TEST_CASE(
    "the parts of two thousand random mats add up to the outer size on the rule's increment") {
  std::mt19937 random(43);
  int laid = 0;
  for (int i = 0; i < 2000; ++i) {
    const std::string lines = test::random_job(random, 6);
    INFO(lines);
    const Job job = test::job_of(lines);
    const auto layout = lay_out(job);
    if (!layout) continue;
    ++laid;
    const std::int64_t step = job.scale.increment.ticks();
    const Sides& b = layout->borders;
    Length left = layout->width, right, top = layout->height, bottom;
    for (const PlacedOpening& opening : layout->openings) {
      left = std::min(left, opening.rect.left);
      right = std::max(right, opening.rect.right);
      top = std::min(top, opening.rect.top);
      bottom = std::max(bottom, opening.rect.bottom);
      CHECK(opening.rect.left.ticks() % step == 0);
      CHECK(opening.rect.top.ticks() % step == 0);
    }
    CHECK(b.left == left);
    CHECK(b.top == top);
    CHECK(right + b.right == layout->width);
    CHECK(bottom + b.bottom == layout->height);
    CHECK(layout->width.ticks() % step == 0);
    CHECK(b.left.ticks() % step == 0);
    CHECK(b.right.ticks() % step == 0);
    CHECK(b.top.ticks() % step == 0);
    CHECK(b.bottom.ticks() % step == 0);
  }
  CHECK(laid > 1000);
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
        layout::arrange(job, layout::build_model(job, {inches(2), inches(1), solver::Rational(1)}));
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
