#include "engine/suggest/patterns.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "engine/suggest/bonds.h"
#include "engine/suggest/criteria.h"
#include "engine/suggest/growing.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

std::vector<Block> pictures(const std::vector<std::pair<int, int>>& sizes) {
  std::vector<Item> items;
  for (const auto& [width, height] : sizes) items.push_back({inches(width), inches(height)});
  return standing_blocks(items, Standing::as_most_do);
}

bool is_mirrored_across(const std::vector<Rect>& rects, Length width) {
  return std::all_of(rects.begin(), rects.end(), [&](const Rect& r) {
    return std::count(rects.begin(), rects.end(),
                      Rect{width - r.right, r.top, width - r.left, r.bottom}) == 1;
  });
}
bool is_mirrored_down(const std::vector<Rect>& rects, Length height) {
  return std::all_of(rects.begin(), rects.end(), [&](const Rect& r) {
    return std::count(rects.begin(), rects.end(),
                      Rect{r.left, height - r.bottom, r.right, height - r.top}) == 1;
  });
}

}  // namespace

TEST_CASE("every pattern holds every picture once") {
  const auto blocks = pictures({{8, 10}, {4, 6}, {4, 6}, {5, 5}, {5, 5}, {6, 4}, {6, 4}, {3, 9}});
  const auto patterns = symmetric_patterns(blocks, inches(1));
  CHECK(patterns.size() > 50);
  for (const Block& pattern : patterns) CHECK(members_of(pattern) == 0xFF);
}

TEST_CASE("twins of one size make patterns that are their own mirror image") {
  const auto blocks = pictures({{8, 10}, {4, 6}, {4, 6}, {5, 5}, {5, 5}, {6, 4}, {6, 4}});
  for (const Block& pattern : symmetric_patterns(blocks, inches(1))) {
    const auto rects = places(pattern, inches(1), blocks.size());
    CHECK((is_mirrored_across(rects, pattern.width) || is_mirrored_down(rects, pattern.height)));
  }
}

TEST_CASE("a large picture among eight equal ones gets a ring around it") {
  const auto blocks =
      pictures({{10, 10}, {4, 4}, {4, 4}, {4, 4}, {4, 4}, {4, 4}, {4, 4}, {4, 4}, {4, 4}});
  const auto patterns = symmetric_patterns(blocks, inches(1));
  const bool has_ring = std::any_of(patterns.begin(), patterns.end(), [&](const Block& pattern) {
    const auto rects = places(pattern, inches(1), blocks.size());
    const Rect& middle = rects.front();
    const auto beside = [&](auto test) {
      return std::any_of(rects.begin() + 1, rects.end(), test);
    };
    return is_mirrored_across(rects, pattern.width) && is_mirrored_down(rects, pattern.height) &&
           beside([&](const Rect& r) { return r.right < middle.left; }) &&
           beside([&](const Rect& r) { return r.left > middle.right; }) &&
           beside([&](const Rect& r) { return r.bottom < middle.top; }) &&
           beside([&](const Rect& r) { return r.top > middle.bottom; });
  });
  CHECK(has_ring);
}

TEST_CASE("an arrangement that is its own mirror image both ways has full marks for symmetry") {
  const auto blocks = pictures({{4, 6}, {4, 6}, {4, 6}, {4, 6}});
  const Block grid = in_lines(blocks, inches(1), Block::Kind::column, 2);
  const Board board{grid.width + inches(4), grid.height + inches(4)};
  CHECK(judge(grid, inches(1), 4, board).symmetry == Approx(1));
  const auto uneven = pictures({{4, 6}, {8, 6}});
  const Block row = in_lines(uneven, inches(1), Block::Kind::column, 1);
  const double left_right = judge(row, inches(1), 2, {row.width, row.height}).symmetry;
  CHECK(left_right < 0.95);
  CHECK(left_right > 0.5);
}
