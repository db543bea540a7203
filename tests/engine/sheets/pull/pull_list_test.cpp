#include "engine/sheets/pull/pull_list.h"

#include <catch2/catch.hpp>
#include <map>

#include "engine/sheets/inventory/take.h"
#include "engine/sheets/plan/whole_mats.h"
#include "engine/sheets/report/report.h"

using namespace mullion;

namespace {

const Board oat{"Oat", {0xec, 0xe5, 0xd4}, sixty_fourths(4)};

StockPiece piece(const std::string& id, Length width, Length height, std::int64_t price,
                 std::optional<int> on_hand, bool offcut = false) {
  StockPiece out;
  out.id = id;
  out.board = oat;
  out.width = width;
  out.height = height;
  out.price = price;
  out.on_hand = on_hand;
  out.offcut = offcut;
  return out;
}

BlankOrder blanks(const std::string& order, Length width, Length height, int quantity,
                  std::vector<Fallout> fallouts = {}) {
  BlankOrder line;
  line.order = order;
  line.layer = "Top mat";
  line.layer_number = 1;
  line.board = oat;
  line.width = width;
  line.height = height;
  line.quantity = quantity;
  line.fallouts = std::move(fallouts);
  return line;
}

SheetPlan plan_of(const std::vector<BlankOrder>& orders, const Stock& stock) {
  SheetPlanOptions options;
  options.effort = 300'000;
  auto plan = plan_whole_mats(orders, stock, {}, {}, options);
  REQUIRE(plan);
  return std::move(*plan);
}

}  // namespace

TEST_CASE("what is needed is taken from the rack first, and the rest bought in whole packs") {
  Stock stock;
  stock.currency = "EUR";
  stock.pieces = {piece("oat", inches(32), inches(40), 1250, 3),
                  piece("c-1", inches(16), inches(20), 0, 1, true)};
  stock.pieces[0].supplier = "Riverside Paper";
  stock.pieces[0].pack = 5;
  // Four blanks a sheet: the off-cut, three sheets, and 12 blanks on three more.
  const std::vector<BlankOrder> orders = {blanks("A-1", inches(16), inches(20), 25)};
  const SheetPlan plan = plan_of(orders, stock);
  const auto rest = plan_missing(plan, stock, {}, {});
  REQUIRE(rest);
  const PullList list = pull_list(plan, stock, &*rest);
  REQUIRE(list.lines.size() == 2);
  CHECK(list.lines[0].needed == 6);
  CHECK(list.lines[0].pull == 3);
  CHECK(list.lines[0].buy == 3);
  CHECK(list.lines[0].packs == 1);
  CHECK(list.lines[0].bought() == 5);
  CHECK(list.lines[0].price() == 6250);
  CHECK(list.lines[1].pull == 1);
  CHECK(list.lines[1].buy == 0);
  REQUIRE(list.purchases().size() == 1);
  CHECK(purchase_text(list.purchases()[0], stock, {}) ==
        "1 in packs of 5 (3 needed) of oat, Oat, 32 x 40 in: 62.50 EUR, from Riverside Paper");
  CHECK(pull_text(list.lines[0], {}) == "3 of oat, Oat, 32 x 40 in");
}

TEST_CASE("what board costs each order adds up to what the plan costs, to the hundredth") {
  Stock stock;
  stock.pieces = {piece("oat", inches(32), inches(40), 1249, {}),
                  piece("large", inches(40), inches(60), 2701, {})};
  std::vector<BlankOrder> orders;
  for (int i = 0; i < 7; ++i) {
    orders.push_back(blanks("A-" + std::to_string(i), inches(7 + i), inches(9 + 2 * i), 3));
  }
  const SheetPlan plan = plan_of(orders, stock);
  for (const PlannedSheet& sheet : plan.boards.at(0).sheets) REQUIRE(!sheet.blanks.empty());
  std::int64_t sum = 0;
  for (const OrderShare& order : costs_of_orders(plan)) {
    CHECK(order.cost > 0);
    sum += order.cost;
  }
  CHECK(sum == plan.cost());
  // Two equal orders on one sheet pay the same, but for the odd hundredth.
  const SheetPlan half = plan_of(
      {blanks("B-1", inches(16), inches(40), 1), blanks("B-2", inches(16), inches(40), 1)}, stock);
  const auto costs = costs_of_orders(half);
  REQUIRE(costs.size() == 2);
  CHECK(costs[0].cost + costs[1].cost == 1249);
  CHECK(std::abs(costs[0].cost - costs[1].cost) == 1);
}

TEST_CASE("a fallout that is worth keeping goes into the stock, unless it is cut into blanks") {
  Stock stock;
  stock.pieces = {piece("oat", inches(32), inches(40), 1250, 9)};
  stock.gone_ids = {"offcut-2"};
  // The fallout of the issue: 23 5/8 x 19 5/8, of each of three mats; one of them holds a blank.
  const Fallout fallout{inches(23) + sixty_fourths(40), inches(19) + sixty_fourths(40), 1};
  const std::vector<BlankOrder> orders = {
      blanks("A-1", inches(32), inches(40), 3, {fallout, {inches(7), inches(30), 2}}),
      blanks("A-2", inches(23), inches(19), 1)};
  const SheetPlan plan = plan_of(orders, stock);
  REQUIRE(plan.cost() == 3 * 1250);
  const auto kept = kept_offcuts(plan, stock, {});
  REQUIRE(kept.size() == 1);
  CHECK(kept[0].piece.id == "offcut-1");
  CHECK(kept[0].piece.width == fallout.width);
  CHECK(kept[0].piece.height == fallout.height);
  CHECK(kept[0].piece.on_hand == 2);
  CHECK(origin_of(kept[0], plan) == "2 fallouts of A-1, Top mat, opening 1, trimmed square");
  const Stock after = stock_after(plan, stock, {});
  CHECK(find_piece(after.pieces, "offcut-1")->on_hand == 2);
  CHECK(find_piece(after.pieces, "oat")->on_hand == 6);
  // An id that was used before is not given to the next.
  stock.gone_ids = {"offcut-1", "offcut-2"};
  CHECK(kept_offcuts(plan, stock, {}).at(0).piece.id == "offcut-3");
}
