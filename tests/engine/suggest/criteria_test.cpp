// What makes an arrangement good, one figure after the other. The examples are sums of our own.

#include "engine/suggest/criteria.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "engine/suggest/improving.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

Rect rect(int left, int top, int width, int height) {
  return {inches(left), inches(top), inches(left + width), inches(top + height)};
}

Criteria judged(const std::vector<Rect>& openings, const Board& board) {
  Length left = board.width, top = board.height, right, bottom;
  for (const Rect& r : openings) {
    left = std::min(left, r.left);
    top = std::min(top, r.top);
    right = std::max(right, r.right);
    bottom = std::max(bottom, r.bottom);
  }
  return judge(openings, right - left, bottom - top, board, 0).value();
}

const Board square{inches(20), inches(20)};

// Rows of columns of rows of pictures of many sizes, from a fixed sequence of numbers.
class Blocks {
 public:
  Block next(const std::vector<Item>& items, Length gap) {
    std::vector<Block> blocks;
    for (std::size_t i = 0; i < items.size(); ++i) {
      blocks.push_back(picture_block(items, static_cast<int>(i), false));
    }
    while (blocks.size() > 1) {
      const std::size_t at = number(blocks.size() - 1);
      const auto kind = number(2) == 0 ? Block::Kind::row : Block::Kind::column;
      blocks[at] = joined(kind, blocks[at], blocks[at + 1], gap);
      blocks.erase(blocks.begin() + static_cast<std::ptrdiff_t>(at) + 1);
    }
    return blocks.front();
  }
  std::size_t number(std::size_t below) {
    state_ = state_ * 1103515245u + 12345u;
    return (state_ >> 16) % below;
  }

 private:
  unsigned state_ = 11;
};

Block mirrored(Block block) {
  for (Block& part : block.parts) part = mirrored(part);
  if (block.kind == Block::Kind::row) std::reverse(block.parts.begin(), block.parts.end());
  return block;
}

}  // namespace

TEST_CASE("every criterion has a name, a meaning and a share in the score, and the shares make 1") {
  std::set<std::string> names;
  double sum = 0;
  for (const Criterion& one : criteria_table()) {
    CHECK(names.insert(one.name).second);
    CHECK(std::string(one.meaning).size() > 15);
    Criteria full;
    full.*one.figure = 1;
    CHECK(score(full) == Approx(weights.*one.figure));
    CHECK(score(full) > 0);
    sum += score(full);
  }
  CHECK(sum == Approx(1));
}

TEST_CASE("openings of 48 square inches fill 12 hundredths of a board of 20 x 20 in") {
  CHECK(judged({rect(2, 7, 4, 6), rect(7, 7, 4, 6)}, square).area == Approx(0.12));
}

TEST_CASE("borders of 2 in at the sides and of 3 in above and below are alike by two thirds") {
  CHECK(judged({rect(2, 3, 10, 10)}, {inches(14), inches(16)}).borders == Approx(2.0 / 3));
}

TEST_CASE("a bottom border that is to be wider counts as alike, and the openings stand higher") {
  const std::vector<Item> items{{inches(10), inches(10)}};
  const Board board{inches(14), inches(15), inches(1)};
  const Block block = picture_block(items, 0, false);
  CHECK(on_board(block, {}, 1, board).front() == rect(2, 2, 10, 10));
  CHECK(judge(block, {}, 1, board).borders == Approx(1));
}

TEST_CASE("balance is full in the optical centre, a little above the middle") {
  // (H - h)(W + w) / 4W = 14 * 26 / 80 = 4.55 in above an opening of 6 x 6 in on 20 x 20 in.
  Rect optical = rect(7, 0, 6, 6);
  optical.top = Length::from_ticks(inches(455).ticks() / 100);
  optical.bottom = optical.top + inches(6);
  CHECK(judged({optical}, square).balance == Approx(1));
  const double middle = judged({rect(7, 7, 6, 6)}, square).balance;
  const double aside = judged({rect(9, 7, 6, 6)}, square).balance;
  const double low = judged({rect(7, 9, 6, 6)}, square).balance;
  CHECK(middle < 1);
  CHECK(aside < middle);
  CHECK(low < middle);
}

TEST_CASE("edges that lie in line count for alignment, wherever on the board they are") {
  const std::vector<Rect> ragged{rect(2, 2, 4, 4), rect(7, 3, 5, 6), rect(13, 4, 4, 9)};
  const std::vector<Rect> level{rect(2, 2, 4, 6), rect(7, 2, 5, 6), rect(13, 2, 4, 6)};
  const std::vector<Rect> grid{rect(2, 2, 4, 4), rect(7, 2, 4, 4), rect(2, 7, 4, 4),
                               rect(7, 7, 4, 4)};
  CHECK(judged(ragged, square).alignment == 0);
  CHECK(judged(level, square).alignment == Approx(0.5));  // four edges of eight that could
  CHECK(judged(grid, square).alignment == Approx(8.0 / 12));
}

TEST_CASE("symmetry counts left and right three times as much as above and below") {
  const std::vector<Rect> both{rect(4, 8, 4, 4), rect(12, 8, 4, 4)};
  const std::vector<Rect> across{rect(4, 2, 4, 4), rect(12, 2, 4, 4)};
  const std::vector<Rect> down{rect(2, 4, 4, 4), rect(2, 12, 4, 4)};
  CHECK(judged(both, square).symmetry == Approx(1));
  CHECK(judged(across, square).symmetry == Approx(0.75));
  CHECK(judged(down, square).symmetry == Approx(0.25));
}

TEST_CASE("bars are alike by the least over the mean, each counted from both its sides") {
  CHECK(judged({rect(2, 2, 4, 4), rect(7, 2, 4, 4), rect(12, 2, 4, 4)}, square).bars == Approx(1));
  // Bars of 1, 1, 3 and 3 in: the mean is 2.
  CHECK(judged({rect(1, 2, 4, 4), rect(6, 2, 4, 4), rect(13, 2, 4, 4)}, square).bars ==
        Approx(0.5));
  CHECK(judged({rect(2, 2, 4, 4)}, square).bars == 1);
}

TEST_CASE(
    "outer edges count as flush by their length where they lie on the sides of one rectangle") {
  CHECK(judged({rect(2, 2, 4, 4), rect(7, 2, 4, 4)}, square).flush == Approx(1));
  // Of edges of 4 + 4 + 3 in at the left and right, 4 + 3 in above and 4 + 3 in below, one of 3 in
  // above does not lie on the rectangle's side.
  const double flush = judged({rect(2, 2, 4, 4), rect(7, 3, 3, 3)}, square).flush;
  CHECK(flush == Approx(1 - 3.0 / (4 + 3 + 4 + 3 + 4 + 3)));
}

TEST_CASE("openings are compact by their share of the rectangle around them") {
  CHECK(judged({rect(2, 2, 4, 4), rect(8, 2, 4, 4)}, square).compact == Approx(0.8));
}

TEST_CASE("borders from as wide as the bars to 5/2 of them are in proportion, six times are not") {
  const auto proportion = [](int border, int bar) {
    return judged({rect(border, border, 4, 4), rect(border + 4 + bar, border, 4, 4)},
                  {inches(2 * border + 8 + bar), inches(2 * border + 4)})
        .proportion;
  };
  CHECK(proportion(2, 1) == Approx(1));
  CHECK(proportion(1, 2) == Approx(0.5));
  CHECK(proportion(6, 1) == Approx(0));
  CHECK(proportion(5, 2) == Approx(1));
}

TEST_CASE(
    "a board as long as 3:2 has full marks for its shape, one of 9:4 half and one of 3:1 none") {
  const auto shape = [](int width, int height) {
    return judged({rect(2, 2, 4, 4)}, {inches(width), inches(height)}).shape;
  };
  CHECK(shape(20, 20) == 1);
  CHECK(shape(30, 20) == 1);
  CHECK(shape(20, 45) == Approx(0.5));
  CHECK(shape(60, 20) == 0);
}

TEST_CASE("an arrangement and its mirror image score the same, over 500 random ones") {
  Blocks blocks;
  const Boards boards(Job(), {}, inches(2), Length());
  const Length gap = sixty_fourths(70);
  for (int run = 0; run < 500; ++run) {
    std::vector<Item> items;
    for (std::size_t i = blocks.number(8) + 2; i > 0; --i) {
      items.push_back({sixty_fourths(200 + static_cast<int>(blocks.number(400))),
                       sixty_fourths(200 + static_cast<int>(blocks.number(400)))});
    }
    const Block block = blocks.next(items, gap), other = mirrored(block);
    const Board board = boards.around(block.width, block.height).value();
    const Criteria a = judge(block, gap, items.size(), board);
    const Criteria b = judge(other, gap, items.size(), board);
    for (const Criterion& one : criteria_table()) {
      INFO(one.name);
      CHECK(a.*one.figure == Approx(b.*one.figure).margin(1e-4));
    }
  }
}
