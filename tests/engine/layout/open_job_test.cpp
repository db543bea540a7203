// A job that is edited while it is open: laid out again as if it were new.

#include <catch2/catch.hpp>

#include "engine/layout/layout.h"
#include "tests/engine/layout/changed_job.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/random_job.h"

using namespace mullion;

namespace {

std::string texts(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) out += to_string(problem) + "\n";
  return out;
}

// All that a layout or its refusal says.
std::string told(const Result<Layout>& layout, const Job& job) {
  if (!layout) return texts(layout.error());
  std::string out;
  const auto add = [&](const Rect& rect) {
    for (const Length edge : {rect.left, rect.top, rect.right, rect.bottom}) {
      out += std::to_string(edge.ticks()) + " ";
    }
  };
  add({{}, {}, layout->width, layout->height});
  for (const PlacedOpening& opening : layout->openings) add(opening.rect);
  for (const PlacedGroup& group : layout->groups) add(group.rect);
  return out + texts(told_notes(*layout, job));
}

}  // namespace

TEST_CASE("an open job is laid out after every edit as a new job would be, to the tick") {
  std::mt19937 random(61);
  int laid = 0, refused = 0;
  for (int i = 0; i < 250; ++i) {
    const std::string lines = test::random_job(random, 8);
    INFO(lines);
    Job job = test::job_of(lines);
    OpenJob open;
    for (int edit = 0; edit < 5; ++edit) {
      const auto layout = lay_out(job);
      ++(layout ? laid : refused);
      CHECK(told(open.lay_out(job), job) == told(layout, job));
      test::edit_one_number(job, random);
    }
  }
  CHECK(laid > 600);
  CHECK(refused > 60);
}

TEST_CASE("a job is laid out the same after a job that has nothing in common with it") {
  std::mt19937 random(67);
  OpenJob open;
  for (int i = 0; i < 200; ++i) {
    const std::string lines = test::random_job(random, 8);
    INFO(lines);
    const Job job = test::job_of(lines);
    CHECK(told(open.lay_out(job), job) == told(lay_out(job), job));
  }
}
