// Arrangements made better by small steps.

#include "engine/suggest/improving.h"

#include <catch2/catch.hpp>
#include <functional>
#include <set>

#include "engine/job/read.h"
#include "engine/suggest/growing.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

const Length gap = inches(1);

Boards any_board() {
  return Boards(Job(), {}, inches(2), Length());
}

// Sizes that differ, from a fixed sequence of numbers.
std::vector<Item> items(int count, const std::function<void(Item&, int)>& mark) {
  std::vector<Item> out;
  unsigned state = 7;
  const auto next = [&](unsigned most) {
    state = state * 1103515245u + 12345u;
    return static_cast<int>((state >> 16) % most);
  };
  for (int i = 0; i < count; ++i) {
    out.push_back({inches(4 + next(8)), inches(4 + next(6))});
    mark(out.back(), i);
  }
  return out;
}

double score_of(const Block& block, std::size_t count) {
  return score(judge(block, gap, count, *any_board().around(block.width, block.height)));
}

// Every opening has its own size, lies within the block and a gap away from the others.
void check_whole(const Block& block, const std::vector<Item>& items) {
  const std::vector<Rect> at = places(block, gap, items.size());
  for (std::size_t i = 0; i < at.size(); ++i) {
    const bool upright = at[i].width() == items[i].width && at[i].height() == items[i].height;
    const bool turned = at[i].width() == items[i].height && at[i].height() == items[i].width;
    CHECK((upright || (items[i].may_turn && turned)));
    CHECK((at[i].left >= Length() && at[i].right <= block.width));
    CHECK((at[i].top >= Length() && at[i].bottom <= block.height));
    for (std::size_t j = 0; j < i; ++j) {
      CHECK((at[i].left >= at[j].right + gap || at[j].left >= at[i].right + gap ||
             at[i].top >= at[j].bottom + gap || at[j].top >= at[i].bottom + gap));
    }
  }
}

}  // namespace

TEST_CASE("an improved arrangement holds the same pictures and scores more than rows of the list") {
  for (const int count : {2, 7, 12, 24}) {
    const auto pictures = items(count, [](Item& item, int i) { item.may_turn = i % 3 == 0; });
    const Bonds bonds(pictures);
    const Block start =
        in_lines(standing_blocks(pictures, Standing::as_most_do), gap, Block::Kind::row, 2);
    const Improved after = improved(start, pictures, bonds, any_board(), gap);
    check_whole(after.block, pictures);
    CHECK(score_of(after.block, pictures.size()) >= score_of(start, pictures.size()));
    if (count > 2) CHECK(score_of(after.block, pictures.size()) > score_of(start, pictures.size()));
    CHECK(after.looked_at <= most_steps_tried + 8);
  }
}

TEST_CASE("an improved arrangement keeps groups together and the sequence") {
  const auto pictures = items(9, [](Item& item, int i) {
    item.group = i < 3 ? 0 : -1;
    item.order = i > 5 ? i : 0;
  });
  const Bonds bonds(pictures);
  const Block start =
      in_lines(standing_blocks(pictures, Standing::as_most_do), gap, Block::Kind::row, 3);
  REQUIRE(bonds.are_kept(start));
  const Improved after = improved(start, pictures, bonds, any_board(), gap);
  CHECK(bonds.are_kept(after.block));
  check_whole(after.block, pictures);
}

TEST_CASE("what no step makes better stays as it is") {
  const std::vector<Item> squares(4, {inches(5), inches(5)});
  std::vector<Block> blocks;
  for (int i = 0; i < 4; ++i) blocks.push_back(picture_block(squares, i, false));
  const Block grid = in_lines(blocks, gap, Block::Kind::row, 2);
  const Improved after = improved(grid, squares, Bonds(squares), any_board(), gap);
  CHECK(look_key(after.block) == look_key(grid));
}
