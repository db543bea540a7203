// Timings, one line each; not a test. `cmake --build --preset release --target bench`.

#include <cstdio>
#include <stdexcept>

#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "engine/mat/mat.h"
#include "render/template/template.h"
#include "tests/bench/cutting.h"
#include "tests/bench/layouts.h"
#include "tests/bench/proof.h"
#include "tests/bench/sheets.h"
#include "tests/bench/stopwatch.h"
#include "tests/bench/suggest.h"
#include "tests/bench/template.h"
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
  constexpr int runs = 200;
  const auto ours = bench::time_of([] { oracle::mullion({"--version"}); }, runs);
  const auto ninjas = bench::time_of([] { oracle::run({"ninja", "--version"}); }, runs);
  const std::string ratio = "of ninja's, goal 2: " + std::to_string(ours.best / ninjas.best);
  row("start-up (mullion --version)", ours, ratio.c_str());
  row("start-up of what draws (mullion template --help)", bench::time_of([] {
        oracle::mullion({"template", "--help"});
      }),
      "");
}

void bench_collage() {
  const std::string path = oracle::gallery("seven-picture-collage.xml");
  row("read and lay out the seven-picture collage",
      bench::time_of([&] { expect(lay_out(expect(read_job(path)))); }), "goal 20 ms with start-up");
  const Job job = expect(read_job(path));
  const Mat mat = expect(build_mat(job, expect(lay_out(job))));
  row("template of the collage, PDF",
      bench::time_of([&] { render_template(job, cuts_of(mat), {}); }), "goal 150 ms for both PDFs");
}

}  // namespace

int main() {
  bench_start_up();
  bench_collage();
  bench::tiled_template();
  bench::cutting();
  bench::layouts();
  bench::suggestions();
  bench::proof();
  bench::sheets();
}
