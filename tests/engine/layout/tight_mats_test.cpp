// Mats a little smaller than their openings would like, with a least border: gaps give way, and yet
// every part is read off the rule.

#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "tests/bench/grid_job.h"
#include "tests/engine/layout/closing.h"

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
