// Mats a little smaller than their openings would like, with a least border: gaps give way, and yet
// every part is read off the rule.

#include <catch2/catch.hpp>
#include <random>

#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "tests/bench/grid_job.h"
#include "tests/engine/layout/closing.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

// Smaller than the free layout by so many sixteenths across and down.
Job tight_grid(int openings, int columns, int across, int down) {
  Job job = parse_job(bench::grid_job(openings, columns), "tight.xml").value();
  const Layout free = lay_out(job).value();
  job.outer_width = free.width - sixty_fourths(4 * across);
  job.outer_height = free.height - sixty_fourths(4 * down);
  job.borders.least = inches(3);
  return job;
}

}  // namespace

TEST_CASE("every size of a tight mat of 12 to 200 openings is read off the rule, and all closes") {
  for (const int openings : {12, 24, 50, 100, 200}) {
    for (const auto& [across, down] : {std::pair(5, 7), {8, 3}, {13, 11}}) {
      INFO(openings << " openings, " << across << " and " << down << " sixteenths short");
      const Job job = tight_grid(openings, 5, across, down);
      const Layout layout = lay_out(job).value();
      CHECK(test::what_does_not_close(job, layout) == "");
      CHECK(test::what_is_off_the_rule(job, layout) == "");
      CHECK(layout.width == *job.outer_width);
      CHECK(layout.height == *job.outer_height);
      const Sides& b = layout.borders;
      for (const Length border : {b.left, b.top, b.right, b.bottom}) CHECK(border >= inches(3));
    }
  }
}

// Few rows of many columns and many of few, a little short or much: some by more than gaps can
// give.
TEST_CASE("every size of a tight mat of 1,200 to 2,000 openings is read off the rule") {
  int laid_out = 0;
  const int seeds = test::how_many(2, 24);
  for (int seed = 1; seed <= seeds; ++seed) {
    std::mt19937 random(static_cast<unsigned>(seed));
    const auto pick = [&](int least, int most) {
      return std::uniform_int_distribution<int>(least, most)(random);
    };
    const int openings = pick(1200, 2000), columns = pick(5, 40);
    const int across = pick(1, 60), down = pick(1, 60);
    INFO("seed " << seed << ": " << openings << " openings in rows of " << columns << ", " << across
                 << " and " << down << " sixteenths short");
    const Job job = tight_grid(openings, columns, across, down);
    const Result<Layout> layout = lay_out(job);
    if (!layout) {
      CHECK(layout.error().front().code == "layout-conflict");
      continue;
    }
    ++laid_out;
    CHECK(test::what_does_not_close(job, *layout) == "");
    CHECK(test::what_is_off_the_rule(job, *layout) == "");
    CHECK(layout->width == *job.outer_width);
    CHECK(layout->height == *job.outer_height);
  }
  CHECK(2 * laid_out > seeds);
}
