// Timings, one line each; not a test. `cmake --build --preset release --target bench`.

#include <cstdio>
#include <stdexcept>

#include "engine/job/read.h"
#include "engine/layout/model.h"
#include "engine/mat/mat.h"
#include "render/template/template.h"
#include "tests/bench/cutting.h"
#include "tests/bench/grid_job.h"
#include "tests/bench/proof.h"
#include "tests/bench/sheets.h"
#include "tests/bench/stopwatch.h"
#include "tests/oracle/linear_program.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

void row(const char* what, const bench::Timing& timing, const char* goal) {
  std::printf("%-52s %9.2f ms  (median %9.2f)  %s\n", what, timing.best, timing.median, goal);
}

template <class T>
T expect(Result<T> result) {
  if (!result) throw std::runtime_error(to_string(result.error().front()));
  return std::move(*result);
}

void bench_start_up() {
  row("start-up (mullion --version)", bench::time_of([] { oracle::mullion({"--version"}); }),
      "goal 10 ms");
}

void bench_collage() {
  const std::string path = oracle::gallery("seven-picture-collage.xml");
  row("read and lay out the seven-picture collage",
      bench::time_of([&] { expect(lay_out(expect(read_job(path)))); }), "goal 20 ms with start-up");
  const Job job = expect(read_job(path));
  const Mat mat = expect(build_mat(job, expect(lay_out(job))));
  row("template of the collage, PDF", bench::time_of([&] { render_template(job, mat, {}); }),
      "goal 150 ms for both PDFs");
}

void bench_grids() {
  for (const int count : {12, 50, 200}) {
    const Job job = expect(parse_job(bench::grid_job(count), "bench.xml"));
    const std::string what = "lay out " + std::to_string(count) + " openings in nested groups";
    const char* goal = count == 12 ? "goal 2 ms" : count == 200 ? "goal 50 ms" : "";
    row(what.c_str(), bench::time_of([&] { expect(lay_out(job)); }, count > 200 ? 3 : 11), goal);
    const layout::Model model =
        layout::build_model(job, {inches(2), inches(1), solver::Rational(1)});
    const auto ours = bench::time_of([&] { solver::solve(model.system).value(); }, 5);
    const auto glpk = bench::time_of([&] { oracle::is_feasible(model.system); }, 5);
    std::printf(
        "  solver alone %.2f ms; GLPK, feasibility of the same rules alone, %.2f ms: "
        "ratio %.2f\n",
        ours.best, glpk.best, ours.best / glpk.best);
  }
}

}  // namespace

int main() {
  bench_start_up();
  bench_collage();
  bench::cutting();
  bench_grids();
  bench::proof();
  bench::sheets();
}
