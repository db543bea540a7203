#include "engine/suggest/difference.h"

#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "engine/suggest/choosing.h"
#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

const std::vector<Item> items{
    {inches(4), inches(6)}, {inches(6), inches(4)}, {inches(5), inches(5)}};
const Length gap = inches(1);

Block picture(int item) {
  return picture_block(items, item, false);
}
Block row(const Block& a, const Block& b) {
  return joined(Block::Kind::row, a, b, gap);
}
Block column(const Block& a, const Block& b) {
  return joined(Block::Kind::column, a, b, gap);
}

double coincidence_of(const Block& a, const Block& b) {
  const Board a_board{a.width + inches(4), a.height + inches(4)};
  const Board b_board{b.width + inches(4), b.height + inches(4)};
  return coincidence(on_board(a, gap, items.size(), a_board), a_board,
                     on_board(b, gap, items.size(), b_board), b_board);
}

}  // namespace

TEST_CASE("the sequence within a row or column does not make another plan; another row does") {
  const Block plan = row(picture(0), column(picture(1), picture(2)));
  CHECK(plan_key(plan) == plan_key(row(column(picture(2), picture(1)), picture(0))));
  CHECK(plan_key(plan) != plan_key(row(picture(1), column(picture(0), picture(2)))));
  CHECK(plan_key(plan) != plan_key(column(picture(0), row(picture(1), picture(2)))));
}

TEST_CASE("an arrangement coincides with its mirror images and not with another one") {
  const Block plan = row(picture(0), column(picture(1), picture(2)));
  const Block mirrored = row(column(picture(2), picture(1)), picture(0));
  CHECK(coincidence_of(plan, plan) == Approx(1));
  CHECK(coincidence_of(plan, mirrored) == Approx(1).epsilon(1e-4));
  CHECK(coincidence_of(plan, column(picture(0), row(picture(1), picture(2)))) < alike_enough);
}

TEST_CASE("the suggestions for few and for many pictures all look different") {
  for (const std::size_t count : {5u, 6u, 12u, 24u}) {
    std::string xml = R"(<job version="1" reference="D" unit="in" increment="1/16"><pictures>)";
    for (std::size_t i = 1; i <= count; ++i) {
      xml += "<picture id=\"p" + std::to_string(i) + "\" width=\"" + std::to_string(i * 7 % 5 + 4) +
             "\" height=\"" + std::to_string(i * 11 % 4 + 4) + "\"/>";
    }
    const Job job = parse_job(xml + "</pictures></job>", "d.xml", Need::pictures).value();
    const auto found = suggest_collages(job, {}).value();
    INFO(count << " pictures");
    REQUIRE(found.best.size() >= few);
    for (std::size_t i = 0; i < found.best.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Ranked &a = found.best[i].ranked, &b = found.best[j].ranked;
        INFO(j + 1 << " and " << i + 1);
        CHECK(plan_key(a.block) != plan_key(b.block));
        CHECK(coincidence(on_board(a.block, gap, count, a.board), a.board,
                          on_board(b.block, gap, count, b.board), b.board) < alike_enough);
      }
    }
  }
}
