// Compositions that rows and columns do not give: each is laid out from the job that is suggested,
// and what it promises is measured in ticks.

#include "engine/suggest/composed.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/mat/mat.h"
#include "engine/suggest/arranged_job.h"
#include "engine/suggest/composition.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/suggest.h"
#include "tests/how_many.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

constexpr Length step = sixty_fourths(4);
constexpr Length gap = sixty_fourths(32);

Job job_of(const std::vector<std::pair<int, int>>& quarters, Length width = {},
           Length height = {}) {
  Job job;
  job.scale = {Unit::inch, step};
  job.layers.emplace_back();
  for (const auto& [across, down] : quarters) {
    Picture picture;
    picture.id = "p" + std::to_string(job.pictures.size());
    picture.width = sixty_fourths(16 * across);
    picture.height = sixty_fourths(16 * down);
    job.pictures.push_back(picture);
  }
  if (width > Length()) {
    job.outer_width = width;
    job.outer_height = height;
  }
  return job;
}

// A composition as the job that is suggested lays it out, after it was written and read.
struct Hung {
  Composition composition;
  Layout layout;
};

std::vector<Hung> hung_of(const Job& job) {
  const std::vector<Item> items = items_of(job);
  const Boards boards(job, {}, inches(2), {});
  const Hanging hanging{gap, inches(2), step, items.size()};
  std::vector<Hung> out;
  for (const Ranked& one :
       composed(standing_blocks(items, Standing::as_most_do), boards, hanging)) {
    const Job whole = arranged(job, one.block, one.board, gap);
    const auto again = parse_job(write_job(whole), "job.xml");
    REQUIRE(again);
    const auto layout = lay_out(*again);
    if (!layout) FAIL(to_string(layout.error().front()));
    out.push_back({composition_of(one.block, gap, items.size()), *layout});
  }
  return out;
}

std::optional<Layout> find(const std::vector<Hung>& all, Composition composition) {
  for (const Hung& one : all) {
    if (one.composition == composition) return one.layout;
  }
  return std::nullopt;
}

Layout layout_of(const Job& job, Composition composition) {
  const auto found = find(hung_of(job), composition);
  INFO(name_of(composition));
  REQUIRE(found.has_value());
  return *found;
}

Length difference(Length a, Length b) {
  return std::max(a - b, b - a);
}

Length least_apart(const Layout& layout) {
  Length out = inches(1000);
  for (std::size_t i = 0; i < layout.openings.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Rect &a = layout.openings[i].rect, &b = layout.openings[j].rect;
      out = std::min(out, std::max(std::max(b.left - a.right, a.left - b.right),
                                   std::max(b.top - a.bottom, a.top - b.bottom)));
    }
  }
  return out;
}

void check_hung(const Layout& layout) {
  CHECK(least_apart(layout) >= gap);
  const Sides& b = layout.borders;
  CHECK(std::min({b.left, b.top, b.right, b.bottom}) >= inches(2) - step);
  CHECK(difference(b.left, b.right) <= step);
  CHECK(difference(b.top, b.bottom) <= step);
  for (const PlacedOpening& one : layout.openings) {
    CHECK(one.rect.left.ticks() % step.ticks() == 0);
    CHECK(one.rect.top.ticks() % step.ticks() == 0);
  }
}

std::set<Length> edges(const Layout& layout, Length Rect::*edge) {
  std::set<Length> out;
  for (const PlacedOpening& one : layout.openings) out.insert(one.rect.*edge);
  return out;
}

}  // namespace

TEST_CASE("a ring around the largest picture fills the frame, and its halves mirror each other") {
  std::vector<std::pair<int, int>> sizes{{24, 28}};
  for (int i = 0; i < 8; ++i) sizes.emplace_back(13, 13);
  const Job job = job_of(sizes, inches(24), inches(28));
  const auto all = hung_of(job);
  const auto oval = find(all, Composition::oval);
  REQUIRE(oval.has_value());
  check_hung(*oval);
  const Rect& whole = oval->groups.front().rect;
  for (const PlacedOpening& one : oval->openings) {
    const Rect mirror{whole.left + whole.right - one.rect.right, one.rect.top,
                      whole.left + whole.right - one.rect.left, one.rect.bottom};
    CHECK(std::any_of(oval->openings.begin(), oval->openings.end(),
                      [&](const PlacedOpening& other) { return other.rect == mirror; }));
  }
  CHECK(difference(oval->borders.left, oval->borders.top) <= step * 2);
}

TEST_CASE("a pinwheel's outer edges lie in four lines, tick by tick, around its centre") {
  const Job job =
      job_of({{32, 20}, {32, 20}, {20, 32}, {20, 32}, {12, 12}}, inches(22), inches(22));
  const Layout layout = layout_of(job, Composition::pinwheel);
  check_hung(layout);
  const Rect& whole = layout.groups.front().rect;
  int on_left = 0, on_top = 0, on_right = 0, on_bottom = 0;
  for (const PlacedOpening& one : layout.openings) {
    on_left += one.rect.left == whole.left ? 1 : 0;
    on_top += one.rect.top == whole.top ? 1 : 0;
    on_right += one.rect.right == whole.right ? 1 : 0;
    on_bottom += one.rect.bottom == whole.bottom ? 1 : 0;
  }
  CHECK((on_left == 2 && on_top == 2 && on_right == 2 && on_bottom == 2));
}

TEST_CASE("staggered columns have even gaps, and each picture lies beside a gap of the next") {
  const Job job = job_of(std::vector<std::pair<int, int>>(8, {16, 12}), inches(24), inches(20));
  const Layout layout = layout_of(job, Composition::staggered_columns);
  check_hung(layout);
  const std::set<Length> lefts = edges(layout, &Rect::left);
  std::vector<std::vector<Rect>> columns;
  for (const Length left : lefts) {
    columns.emplace_back();
    for (const PlacedOpening& one : layout.openings) {
      if (one.rect.left == left) columns.back().push_back(one.rect);
    }
  }
  REQUIRE(columns.size() >= 3);
  std::set<Length> bars;
  for (const auto& column : columns) {
    for (std::size_t i = 1; i < column.size(); ++i) {
      bars.insert(column[i].top - column[i - 1].bottom);
    }
  }
  CHECK(bars.size() == 1);
  for (std::size_t i = 1; i < columns.size(); ++i) {
    for (const Rect& a : columns[i - 1]) {
      for (const Rect& b : columns[i]) CHECK(a.top != b.top);
    }
  }
}

TEST_CASE("long low pictures begin on the left line and end on the right one in turn") {
  const Job job =
      job_of({{48, 16}, {40, 12}, {48, 16}, {40, 12}, {44, 12}}, inches(20), inches(34));
  const Layout layout = layout_of(job, Composition::staggered_rows);
  check_hung(layout);
  const Rect& whole = layout.groups.front().rect;
  std::vector<Rect> rows;
  for (const PlacedOpening& one : layout.openings) rows.push_back(one.rect);
  std::sort(rows.begin(), rows.end(), [](const Rect& a, const Rect& b) { return a.top < b.top; });
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK((i % 2 == 0 ? rows[i].left == whole.left : rows[i].right == whole.right));
  }
}

TEST_CASE("pictures of a row of different heights stand on one line, tick by tick") {
  const Job job = job_of({{16, 20}, {16, 12}, {20, 16}, {12, 24}}, inches(26), inches(14));
  const Layout layout = layout_of(job, Composition::baseline_rows);
  check_hung(layout);
  CHECK(edges(layout, &Rect::bottom).size() == 1);
}

TEST_CASE("a long low picture is hung below all others, in the middle") {
  Job job = job_of({{20, 24}, {20, 24}, {20, 24}, {32, 6}}, inches(24), inches(16));
  const auto found = suggest_collages(job, {6, gap, inches(2), {}, 2, nullptr});
  REQUIRE(found.has_value());
  const auto one = std::find_if(found->best.begin(), found->best.end(), [](const Suggestion& s) {
    return s.composition == Composition::title_below;
  });
  REQUIRE(one != found->best.end());
  const Layout layout = lay_out(one->job).value();
  const Rect& title = layout.openings.back().rect;
  for (const PlacedOpening& other : layout.openings) {
    CHECK((other.number == static_cast<int>(layout.openings.size()) ||
           other.rect.bottom + gap <= title.top));
  }
  CHECK(difference(title.left, layout.width - title.right) <= step);
}

TEST_CASE("what is composed of random pictures lays out with its gaps and even borders") {
  std::mt19937 random(5);
  const auto number = [&](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  std::set<Composition> seen;
  for (int turn = 0; turn < test::how_many(6, 300); ++turn) {
    const int count = 4 + number(9), kinds = 1 + number(3);
    std::vector<std::pair<int, int>> known, sizes;
    for (int i = 0; i < kinds; ++i) known.emplace_back(10 + number(20), 10 + number(20));
    for (int i = 0; i < count; ++i) sizes.push_back(known[static_cast<std::size_t>(number(kinds))]);
    if (number(2) == 0) sizes.front() = {30 + number(10), 30 + number(10)};
    const bool is_free = number(3) == 0;
    const Job job =
        is_free ? job_of(sizes) : job_of(sizes, inches(20 + number(16)), inches(20 + number(20)));
    for (const Hung& one : hung_of(job)) {
      INFO(name_of(one.composition) << " of " << count);
      seen.insert(one.composition);
      check_hung(one.layout);
    }
  }
  CHECK(seen.size() >= 3);
}
