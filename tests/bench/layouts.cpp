#include "tests/bench/layouts.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

#include "engine/job/read.h"
#include "engine/layout/arrangement.h"
#include "engine/layout/layout.h"
#include "tests/bench/grid_job.h"
#include "tests/bench/stopwatch.h"
#include "tests/oracle/linear_program.h"

using namespace mullion;

namespace {

const layout::Defaults defaults{inches(3), inches(1), solver::Rational(1)};

// About as many columns as make a square, so that jobs of all sizes are alike.
Job grid(int openings) {
  const int columns = std::max(2, static_cast<int>(std::lround(std::sqrt(openings) / 2)));
  return parse_job(bench::grid_job(openings, columns), "bench.xml").value();
}

// A mat a little smaller than its openings would like, with a least border: gaps give way.
Job tight_grid(int openings) {
  Job job = grid(openings);
  const Layout free = lay_out(job).value();
  job.outer_width = free.width - sixty_fourths(20);
  job.outer_height = free.height - sixty_fourths(28);
  job.borders.least = inches(3);
  return job;
}

double time_layout(const char* kind, const Job& job, int openings, const char* goal) {
  const auto timing =
      bench::processor_time_of([&] { lay_out(job).value(); }, openings > 200 ? 1 : 15);
  std::printf("lay out %3d openings, %-28s %11.2f ms  (median %9.2f)  %s\n", openings, kind,
              timing.best, timing.median, goal);
  return timing.best;
}

// Least squares through the points (log n, log t).
double growth(const std::vector<std::pair<int, double>>& times) {
  double x_sum = 0, y_sum = 0, xx = 0, xy = 0;
  for (const auto& [count, time] : times) {
    const double x = std::log(count), y = std::log(time);
    x_sum += x;
    y_sum += y;
    xx += x * x;
    xy += x * y;
  }
  const double n = static_cast<double>(times.size());
  return (n * xy - x_sum * y_sum) / (n * xx - x_sum * x_sum);
}

void series(const char* kind, Job (*job_of)(int), bool has_goals) {
  std::vector<std::pair<int, double>> times;
  for (const int count : {12, 50, 100, 200, 400, 800}) {
    const char* goal = !has_goals     ? ""
                       : count == 12  ? "goal 2 ms"
                       : count == 200 ? "goal 50 ms"
                                      : "";
    const double time = time_layout(kind, job_of(count), count, goal);
    if (count >= 50) times.emplace_back(count, time);
  }
  std::printf("  growth from 50 to 800 openings, %s: n^%.2f (goal n^2)\n", kind, growth(times));
}

const char* name_of(oracle::Code code) {
  return code == oracle::Code::glpk ? "GLPK" : "Clp";
}

// The same rules and levels in the others: sums of absolute violations there, of squares here. And
// what they take for the required rules alone.
void beside_others(const char* kind, const Job& job) {
  const layout::Model model = layout::build_model(job, defaults);
  const auto ours = bench::processor_time_of([&] { solver::solve(model.system).value(); });
  std::printf("solve the rules of %s, all levels: %.2f ms\n", kind, ours.best);
  for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
    const auto all =
        bench::processor_time_of([&] { oracle::minimise_all_levels(model.system, code); });
    const auto first = bench::processor_time_of([&] { oracle::is_feasible(model.system, code); });
    std::printf(
        "  %-4s all levels %8.2f ms, ours / theirs %.2f; required rules alone %8.2f ms, "
        "ours / theirs %.2f\n",
        name_of(code), all.best, ours.best / all.best, first.best, ours.best / first.best);
  }
}

// One number edited in an open job, and the same job laid out from scratch.
void edit(const char* kind, Job job) {
  int turn = 0;
  OpenJob open;
  open.lay_out(job).value();
  const auto change = [&] {
    job.pictures.front().width = inches(3) + sixty_fourths(4 * (++turn % 7));
  };
  const auto again = bench::processor_time_of([&] { change(), open.lay_out(job).value(); }, 21);
  const auto anew = bench::processor_time_of([&] { change(), lay_out(job).value(); }, 21);
  std::printf("one number edited, %-30s laid out again %8.2f ms, anew %8.2f ms  (goal 1 ms)\n",
              kind, again.median, anew.median);
}

}  // namespace

void bench::layouts() {
  for (const int openings : {12, 200}) {
    const std::string count = std::to_string(openings) + " openings";
    beside_others(count.c_str(), grid(openings));
    beside_others((count + " in a tight mat").c_str(), tight_grid(openings));
  }
  for (const int openings : {7, 12, 24, 200}) {
    const std::string count = std::to_string(openings) + " openings";
    edit((count + ",").c_str(), grid(openings));
    edit((count + " in a tight mat,").c_str(), tight_grid(openings));
  }
  series("nested groups", grid, true);
  series("nested groups in a tight mat", tight_grid, false);
}
