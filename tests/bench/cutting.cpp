#include "tests/bench/cutting.h"

#include <cstdio>

#include "engine/cuts/run/run.h"
#include "engine/job/read.h"
#include "tests/bench/grid_job.h"
#include "tests/bench/stopwatch.h"

namespace bench {
namespace {

using namespace mullion;

void row(const char* what, const Timing& timing, const char* goal) {
  std::printf("%-52s %9.2f ms  (median %9.2f)  %s\n", what, timing.best, timing.median, goal);
}

Mat grid_mat(int openings) {
  const Job job = parse_job(grid_job(openings), "bench.xml").value();
  return build_mat(job, lay_out(job).value()).value();
}

}  // namespace

void cutting() {
  const Mat mat = grid_mat(12);
  row("cutting plan for 12 openings on two layers",
      time_of([&] { plan_cutting(mat, default_cutter()).value(); }), "goal 20 ms");
  std::vector<RunJob> jobs;
  for (int kind = 1; kind <= 10; ++kind) {
    jobs.push_back({"kind " + std::to_string(kind), "", grid_mat(kind), 50});
  }
  row("run of 500 mats of 10 kinds, 1 to 10 openings",
      time_of([&] { plan_run(jobs, default_cutter()).value(); }, 5), "goal 1 s");
}

}  // namespace bench
