#include "engine/sheets/plan/whole_mats.h"

#include <catch2/catch.hpp>
#include <map>
#include <random>
#include <set>
#include <tuple>

#include "tests/how_many.h"

using namespace mullion;

namespace {

const Board chalk{"Chalk", {0xf4, 0xf1, 0xea}, sixty_fourths(4)};
const Board ink{"Ink", {0x2b, 0x31, 0x42}, sixty_fourths(4)};

// A mat of one board or two.
void add_mats(std::vector<BlankOrder>& orders, const std::string& order, Length width,
              Length height, int quantity, const std::vector<Board>& boards) {
  for (const Board& board : boards) {
    BlankOrder line;
    line.order = order;
    line.layer_number = static_cast<int>(&board - boards.data()) + 1;
    line.layer = "Layer " + std::to_string(line.layer_number);
    line.board = board;
    line.width = width;
    line.height = height;
    line.quantity = quantity;
    orders.push_back(line);
  }
}

Stock rack(int sheets_of_chalk, std::optional<int> sheets_of_ink) {
  Stock stock;
  for (const auto& [board, count] :
       {std::pair(chalk, std::optional(sheets_of_chalk)), std::pair(ink, sheets_of_ink)}) {
    StockPiece piece;
    piece.id = board.name;
    piece.board = board;
    piece.width = inches(32);
    piece.height = inches(40);
    piece.price = 1250;
    piece.on_hand = count;
    stock.pieces.push_back(piece);
  }
  return stock;
}

SheetPlan plan_of(const std::vector<BlankOrder>& orders, const Stock& stock) {
  SheetPlanOptions options;
  options.effort = 300'000;
  auto plan = plan_whole_mats(orders, stock, {}, {}, options);
  REQUIRE(plan);
  return std::move(*plan);
}

// How many blanks of each layer of each order are cut; those missing are the rest of the order.
std::map<std::string, std::vector<int>> made_in(const SheetPlan& plan) {
  std::map<std::string, std::vector<int>> made;
  for (const BoardPlan& board : plan.boards) {
    std::vector<int> counts(board.lines.size()), missing(board.lines.size());
    for (const PlannedSheet& sheet : board.sheets) {
      for (const BlankCopy& copy : sheet.blanks) ++counts[static_cast<std::size_t>(copy.line)];
    }
    for (const BlankCopy& copy : board.missing) ++missing[static_cast<std::size_t>(copy.line)];
    for (std::size_t i = 0; i < counts.size(); ++i) {
      CHECK(counts[i] + missing[i] == board.lines[i].quantity);
      made[board.lines[i].order].push_back(counts[i]);
    }
  }
  return made;
}

using Made = std::map<std::string, std::vector<int>>;

}  // namespace

TEST_CASE("a double mat of which one board is short is not begun on the other") {
  // One sheet of Chalk holds four of 16 x 20; Ink would suffice for all.
  std::vector<BlankOrder> orders;
  add_mats(orders, "A", inches(16), inches(20), 6, {chalk, ink});
  const SheetPlan plan = plan_of(orders, rack(1, {}));
  CHECK(made_in(plan) == Made{{"A", {4, 4}}});
  REQUIRE(plan.left_out.size() == 1);
  CHECK(plan.left_out[0].order == "A");
  CHECK(plan.left_out[0].mats == 2);
  CHECK(plan.left_out[0].ordered == 6);
  CHECK(plan.left_out[0].first_copy() == 5);
  CHECK(plan.left_out[0].short_of == std::vector<Board>{chalk});
}

TEST_CASE(
    "where board is short, the first order named is served first, and later ones if they can") {
  std::vector<BlankOrder> orders;
  add_mats(orders, "A", inches(16), inches(40), 1, {chalk});
  add_mats(orders, "B", inches(20), inches(40), 1, {chalk});  // no room beside A
  add_mats(orders, "C", inches(16), inches(20), 3, {chalk});
  add_mats(orders, "D", inches(30), inches(39), 9, {ink});
  const SheetPlan plan = plan_of(orders, rack(1, {}));
  CHECK(made_in(plan) == Made{{"A", {1}}, {"B", {0}}, {"C", {2}}, {"D", {9}}});
  CHECK(plan.left_out.size() == 2);
}

TEST_CASE("with nothing on hand nothing is made, and with enough everything") {
  std::vector<BlankOrder> orders;
  add_mats(orders, "A", inches(16), inches(20), 2, {chalk, ink});
  CHECK(made_in(plan_of(orders, rack(0, 0))) == Made{{"A", {0, 0}}});
  const SheetPlan all = plan_of(orders, rack(1, 1));
  CHECK(all.is_complete());
  CHECK(all.left_out.empty());
}

TEST_CASE("no batch on a rack that is short gives a mat with layers missing") {
  std::mt19937 random(3);
  const auto number = [&random](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  int incomplete = 0;
  for (int round = 0; round < test::how_many(12, 400); ++round) {
    std::vector<BlankOrder> orders;
    for (int i = 0; i < 6; ++i) {
      const std::vector<std::vector<Board>> kinds = {{chalk}, {ink}, {chalk, ink}};
      add_mats(orders, "O-" + std::to_string(i), inches(number(8, 20)), inches(number(8, 20)),
               number(1, 4), kinds[static_cast<std::size_t>(number(0, 2))]);
    }
    const SheetPlan plan = plan_of(orders, rack(number(0, 4), number(0, 4)));
    const Made made = made_in(plan);
    std::map<std::string, int> left;
    for (const LeftOut& out : plan.left_out) left[out.order] = out.mats;
    for (const BlankOrder& order : orders) {
      for (const int count : made.at(order.order)) {
        CHECK(count == order.quantity - left[order.order]);
      }
    }
    incomplete += plan.left_out.empty() ? 0 : 1;
    CHECK(plan.left_out.empty() == plan.is_complete());
  }
  CHECK(incomplete > 3);
}

TEST_CASE("no plan cuts more of a piece than is on hand, be it sheets or fallouts") {
  std::mt19937 random(11);
  const auto number = [&random](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  for (int round = 0; round < test::how_many(4, 200); ++round) {
    std::vector<BlankOrder> orders;
    for (int i = 0; i < 25; ++i) {
      const Length width = inches(number(10, 20)), height = inches(number(10, 24));
      add_mats(orders, "L-" + std::to_string(i), width, height, 3, {chalk});
      orders.back().fallouts = {{width - inches(4), height - inches(4), 1}};
    }
    Stock stock = rack(number(6, 20), 0);
    stock.pieces.resize(1);
    for (int i = 0; i < 4; ++i) {
      StockPiece piece = stock.pieces[0];
      piece.id = "kind-" + std::to_string(i);
      piece.width = inches(number(20, 40));
      piece.height = inches(number(20, 60));
      piece.price = number(300, 2000);
      piece.on_hand = number(1, 4);
      stock.pieces.push_back(piece);
    }
    const SheetPlan plan = plan_of(orders, stock);
    made_in(plan);
    std::map<int, int> used;
    std::set<std::tuple<int, int, int>> fallouts;
    for (const PlannedSheet& sheet : plan.boards.at(0).sheets) {
      if (sheet.stock >= 0) {
        ++used[sheet.stock];
      } else {
        CHECK(
            fallouts.insert({sheet.parent.line, sheet.parent.copy, sheet.fallout.opening}).second);
      }
    }
    for (const auto& [piece, count] : used) {
      CHECK(count <= stock.pieces.at(static_cast<std::size_t>(piece)).on_hand.value());
    }
  }
}
