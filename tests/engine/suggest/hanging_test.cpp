// Gaps that make rows and columns flush. The examples are sums of our own.

#include "engine/suggest/hanging.h"

#include <catch2/catch.hpp>

#include "engine/suggest/composition.h"
#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

const Hanging hanging{inches(1), inches(2), sixty_fourths(4), 5};

std::vector<Item> items(const std::vector<std::pair<int, int>>& sizes) {
  std::vector<Item> out;
  for (const auto& [width, height] : sizes) out.push_back({inches(width), inches(height)});
  return out;
}

// A row of three above a row of two.
Block two_rows(const std::vector<Item>& of) {
  const auto picture = [&](int i) { return picture_block(of, i, false); };
  const Block above = chain(Block::Kind::row, {picture(0), picture(1), picture(2)}, inches(1));
  return joined(Block::Kind::column, above,
                joined(Block::Kind::row, picture(3), picture(4), inches(1)), inches(1));
}

}  // namespace

TEST_CASE("rows of one column end on common lines") {
  // 4 + 4 + 5 = 13 and 6 + 7 = 13 in a width of 15 in: gaps of 1 and of 2 in.
  const auto of = items({{4, 6}, {4, 6}, {5, 6}, {6, 4}, {7, 4}});
  const Block block = stretched(two_rows(of), hanging, inches(15), inches(12), false);
  CHECK(block.width == inches(15));
  CHECK(block.height == inches(12));
  CHECK((block.gaps == std::vector<Length>{inches(2)}));
  CHECK((block.parts[0].gaps == std::vector<Length>(2, inches(1))));
  CHECK((block.parts[1].gaps == std::vector<Length>{inches(2)}));
  CHECK(composition_of(block, inches(1), 5) == Composition::flush_rows);
}

TEST_CASE(
    "what does not divide makes gaps differ by one increment, and no gap is twice the least") {
  const auto of = items({{4, 6}, {4, 6}, {5, 6}, {6, 4}, {7, 4}});
  const Length step = hanging.increment, width = inches(15) + step;
  const Block block = stretched(two_rows(of), hanging, width, inches(11), false);
  CHECK((block.parts[0].gaps == std::vector<Length>{inches(1) + step, inches(1)}));
  CHECK((block.parts[1].gaps == std::vector<Length>{inches(2)}));  // 2 1/16 in would be flush
  CHECK(block.width == width);
}

TEST_CASE("pictures of the outermost rows stand on the block's outer edges where they may") {
  const auto of = items({{4, 6}, {4, 5}, {5, 4}, {6, 4}, {7, 3}});
  const Block block = stretched(two_rows(of), hanging, inches(15), inches(11), true);
  const std::vector<Rect> at = places(block, inches(1), 5);
  for (const std::size_t above : {0u, 1u, 2u}) CHECK(at[above].top == Length());
  for (const std::size_t below : {3u, 4u}) CHECK(at[below].bottom == inches(11));
}

TEST_CASE("a hung block keeps the least gap and border, and the layout places it so") {
  Job job;
  job.scale = {Unit::inch, sixty_fourths(4)};
  int number = 0;
  for (const auto& [width, height] : std::vector<std::pair<int, int>>{
           {8, 10}, {5, 7}, {7, 5}, {4, 6}, {6, 4}, {4, 4}, {3, 5}, {5, 3}, {6, 8}}) {
    Picture picture;
    picture.id = "p" + std::to_string(++number);
    picture.width = inches(width);
    picture.height = inches(height);
    job.pictures.push_back(picture);
  }
  for (const bool has_frame : {false, true}) {
    if (has_frame) {
      job.outer_width = inches(24);
      job.outer_height = inches(32);
    }
    const auto found = suggest_collages(job, {});
    REQUIRE(found.has_value());
    for (const Suggestion& one : found->best) {
      CHECK(one.least_gap >= inches(1));
      CHECK(one.widest_gap <= inches(has_frame ? 4 : 1) * widest_gap);
      const Layout layout = lay_out(one.job).value();
      CHECK(layout.borders.left >= inches(2));
      CHECK(layout.borders.top >= inches(2));
      const auto rects = on_board(one.ranked.block, inches(1), 9, one.ranked.board);
      for (const PlacedOpening& opening : layout.openings) {
        const auto item = static_cast<std::size_t>(std::stoi(opening.id.substr(1)) - 1);
        // Borders that are not alike by whole increments take up to one of it.
        const auto off = [&](Length a, Length b) { return a < b ? b - a : a - b; };
        CHECK(off(opening.rect.left, rects[item].left) <= job.scale.increment);
        CHECK(off(opening.rect.top, rects[item].top) <= job.scale.increment);
      }
    }
  }
}

TEST_CASE("nine mixed pictures in a frame get at least three compositions, the best one flush") {
  Job job;
  job.scale = {Unit::inch, sixty_fourths(4)};
  int number = 0;
  for (const auto& [width, height] : std::vector<std::pair<int, int>>{
           {4, 6}, {4, 6}, {4, 6}, {6, 4}, {6, 4}, {5, 7}, {5, 7}, {7, 5}, {5, 5}}) {
    Picture picture;
    picture.id = "p" + std::to_string(++number);
    picture.width = inches(width);
    picture.height = inches(height);
    job.pictures.push_back(picture);
  }
  job.outer_width = inches(24);
  job.outer_height = inches(36);
  const auto found = suggest_collages(job, {}).value();
  std::set<Composition> seen;
  for (const Suggestion& one : found.best) seen.insert(one.composition);
  CHECK(seen.size() >= 3);
  CHECK(found.best.front().ranked.criteria.flush == Approx(1));
}

TEST_CASE("compositions are called by what they are") {
  const auto of = items({{8, 10}, {4, 6}, {4, 6}, {6, 4}, {6, 4}});
  const auto picture = [&](int i) { return picture_block(of, i, false); };
  const Length gap = inches(1);
  const Block middle = chain(Block::Kind::row, {picture(1), picture(0), picture(2)}, gap);
  const Block cross = chain(Block::Kind::column, {picture(3), middle, picture(4)}, gap);
  CHECK(composition_of(cross, gap, 5) == Composition::centre_piece);
  CHECK(composition_of(middle, gap, 5) == Composition::row);
  CHECK(composition_of(picture(0), gap, 5) == Composition::single);
  const auto alike = items({{4, 6}, {4, 6}, {4, 6}, {4, 6}});
  const auto one = [&](int i) { return picture_block(alike, i, false); };
  const Block rows = joined(Block::Kind::column, joined(Block::Kind::row, one(0), one(1), gap),
                            joined(Block::Kind::row, one(2), one(3), gap), gap);
  CHECK(composition_of(rows, gap, 4) == Composition::grid);
}
