// Which of several pictures of one size stands where.

#include "engine/suggest/reading_order.h"

#include <catch2/catch.hpp>
#include <functional>

#include "engine/job/read.h"
#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

const Length gap = inches(1);

struct Want {
  int item;
  bool turned = false;
};

Block line(Block::Kind kind, const std::vector<Item>& items, const std::vector<Want>& wants) {
  const auto at = [&](std::size_t i) {
    return picture_block(items, wants[i].item, wants[i].turned);
  };
  Block out = at(0);
  for (std::size_t i = 1; i < wants.size(); ++i) out = joined(kind, out, at(i), gap);
  return out;
}

std::string text(const Block& block) {
  if (block.kind == Block::Kind::picture) {
    return std::to_string(block.item) + (block.turned ? "t" : "");
  }
  std::string out;
  for (const Block& part : block.parts) out += (out.empty() ? "" : " ") + text(part);
  return (block.kind == Block::Kind::row ? "(" : "[") + out +
         (block.kind == Block::Kind::row ? ")" : "]");
}

constexpr auto row = Block::Kind::row, column = Block::Kind::column;
const Item print{inches(4), inches(6)}, landscape{inches(6), inches(4)};

Item that_may_turn(Item item) {
  item.may_turn = true;
  return item;
}

}  // namespace

TEST_CASE("prints of one size follow one another from left to right and from the top down") {
  const std::vector<Item> items(4, print);
  const Block block =
      joined(row, line(column, items, {{3}, {1}}), line(column, items, {{0}, {2}}), gap);
  CHECK(text(in_reading_order(block, items, gap)) == "([0 2] [1 3])");
  CHECK(places(in_reading_order(block, items, gap), gap, 4)[3] == places(block, gap, 4)[2]);
}

TEST_CASE("no picture is turned while another one is turned back for it") {
  const std::vector<Item> items{that_may_turn(print), that_may_turn(landscape)};
  CHECK(text(in_reading_order(line(row, items, {{0, true}, {1, true}}), items, gap)) == "(1 0)");
}

TEST_CASE("where some have to turn it is the last that may") {
  const std::vector<Item> items{that_may_turn(print), that_may_turn(print), print, landscape};
  const Block block = line(row, items, {{0, true}, {3}, {1}, {2}});
  CHECK(text(in_reading_order(block, items, gap)) == "(1t 3 0 2)");
}

TEST_CASE("pictures of another size, with an order or of another group stay where they are") {
  std::vector<Item> items{{inches(5), inches(7)}, print, print, print, print, print};
  items[1].order = 2;
  items[2].order = 1;
  items[3].group = 0;
  const Block block = line(row, items, {{5}, {2}, {1}, {3}, {4}, {0}});
  CHECK(text(in_reading_order(block, items, gap)) == "(4 2 1 3 5 0)");
}

TEST_CASE(
    "the first suggestion for ten prints of one size has them in two rows as they are listed") {
  std::string xml = R"(<job version="1" reference="T" unit="in" increment="1/16"><pictures>)";
  for (int i = 0; i < 10; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + R"(" width="4" height="6"/>)";
  }
  const Job job = parse_job(xml + "</pictures></job>", "ten.xml", Need::pictures).value();
  const Suggestion best = suggest_collages(job, {}).value().best.front();
  const std::vector<Rect> at = places(best.ranked.block, inches(1), 10);
  for (std::size_t i = 1; i < 10; ++i) {
    CHECK((at[i].top > at[i - 1].top || at[i].left > at[i - 1].left));
    CHECK((i == 5) == (at[i].top > at[i - 1].top));
  }
}
