// A job that is written and read again is the same job: in its words, in what it states, and in
// what comes of it.

#include <catch2/catch.hpp>
#include <filesystem>

#include "engine/diff/diff.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::vector<Rect> rects_of(const Layout& layout) {
  std::vector<Rect> out{{{}, {}, layout.width, layout.height}};
  for (const PlacedOpening& opening : layout.openings) out.push_back(opening.rect);
  for (const PlacedGroup& group : layout.groups) out.push_back(group.rect);
  return out;
}

bool same(const Rule& a, const Rule& b) {
  return a.kind == b.kind && a.of == b.of && a.edge == b.edge && a.dimension == b.dimension &&
         a.on == b.on && a.value == b.value && a.factor_numerator == b.factor_numerator &&
         a.factor_denominator == b.factor_denominator && a.strength == b.strength;
}

void check_written(const Job& job) {
  const std::string written = write_job(job);
  INFO(written);
  const auto again = parse_job(written, job.file);
  REQUIRE(again);
  CHECK(write_job(*again) == written);
  CHECK(std::equal(again->rules.begin(), again->rules.end(), job.rules.begin(), job.rules.end(),
                   same));
  const auto before = lay_out(job), after = lay_out(*again);
  REQUIRE(before.has_value() == after.has_value());
  if (!before) return;
  CHECK(rects_of(*after) == rects_of(*before));
  CHECK(differences({job, *before}, {*again, *after}) == std::vector<std::string>{});
}

}  // namespace

TEST_CASE("every job of the gallery is the same after it was written and read again") {
  std::size_t jobs = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    INFO(entry.path());
    check_written(read_job(entry.path().string()).value());
    ++jobs;
  }
  CHECK(jobs > 25);
}

TEST_CASE("random jobs of every kind are the same after they were written and read again") {
  std::mt19937 random(61);
  for (int i = 0; i < 150; ++i) check_written(test::wild_job(random, 5).job());
}
