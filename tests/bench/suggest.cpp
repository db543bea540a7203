#include "tests/bench/suggest.h"

#include <cstdio>
#include <stdexcept>

#include "engine/suggest/suggest.h"
#include "tests/bench/stopwatch.h"

using namespace mullion;

namespace {

Job pictures(int count, bool may_turn) {
  Job job;
  job.scale = {Unit::inch, sixty_fourths(4)};
  for (int i = 0; i < count; ++i) {
    Picture picture;
    picture.id = "p" + std::to_string(i);
    picture.width = inches(4 + i * 5 % 8);
    picture.height = inches(11 - i * i % 5);
    picture.may_turn = may_turn;
    job.pictures.push_back(picture);
  }
  return job;
}

void row(const char* what, const Job& job, int runs) {
  std::uint64_t looked_at = 0;
  const bench::Timing timing = bench::time_of(
      [&] {
        const auto found = suggest::suggest_collages(job, {});
        if (!found) throw std::runtime_error(to_string(found.error().front()));
        looked_at = found->looked_at;
      },
      runs);
  std::printf("%-52s %9.2f ms  (median %9.2f)  %llu arrangements\n", what, timing.best,
              timing.median, static_cast<unsigned long long>(looked_at));
}

}  // namespace

void bench::suggestions() {
  row("suggest, six pictures that may all turn", pictures(6, true), 3);
  row("suggest, 24 pictures", pictures(24, false), 5);
}
