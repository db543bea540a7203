#include "engine/sheets/plan/sheet_plan.h"

#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "cut_check.h"
#include "engine/sheets/plan/cuts.h"

using namespace mullion;

namespace {

const Board oat{"Oat", {0xf2, 0xee, 0xe3}, sixty_fourths(4)};
const Board slate{"Slate", {0x40, 0x44, 0x4a}, sixty_fourths(4)};

BlankOrder blank(const std::string& order, const Board& board, Length width, Length height,
                 int quantity) {
  BlankOrder line;
  line.order = order;
  line.layer = "Top mat";
  line.layer_number = 1;
  line.board = board;
  line.width = width;
  line.height = height;
  line.quantity = quantity;
  return line;
}

StockPiece sheet(const std::string& id, const Board& board, Length width, Length height,
                 std::int64_t price, std::optional<int> on_hand = {}) {
  StockPiece piece;
  piece.id = id;
  piece.board = board;
  piece.width = width;
  piece.height = height;
  piece.price = price;
  piece.on_hand = on_hand;
  return piece;
}

Stock shop() {
  Stock stock;
  stock.currency = "EUR";
  stock.pieces = {sheet("oat-standard", oat, inches(32), inches(40), 1200),
                  sheet("oat-oversize", oat, inches(40), inches(60), 2600),
                  sheet("slate-standard", slate, inches(32), inches(40), 1400)};
  return stock;
}

SheetPlanOptions quick() {
  SheetPlanOptions options;
  options.effort = 1'000'000;
  return options;
}

// Every copy that was ordered lies on exactly one sheet, with its own size.
void check_copies(const SheetPlan& plan, const SheetCutter& cutter) {
  for (const BoardPlan& board : plan.boards) {
    std::map<std::pair<int, int>, int> made;
    for (const PlannedSheet& planned : board.sheets) {
      std::vector<BlankSize> sizes;
      for (const BlankCopy& copy : planned.blanks) {
        const BlankOrder& line = board.lines.at(static_cast<std::size_t>(copy.line));
        sizes.push_back({line.width, line.height, !line.grain});
        ++made[{copy.line, copy.copy}];
      }
      const Length width = planned.width - planned.trim.left - planned.trim.right;
      const Length height = planned.height - planned.trim.top - planned.trim.bottom;
      CHECK(fault_in(planned.pattern, width, height, cutter.limits, sizes) == "");
      CHECK(value_of(planned.pattern, width, height, cutter.limits.kerf,
                     std::vector<std::int64_t>(sizes.size(), 1)) ==
            static_cast<std::int64_t>(sizes.size()));
    }
    for (const BlankCopy& copy : board.missing) ++made[{copy.line, copy.copy}];
    std::size_t ordered = 0;
    for (const BlankOrder& line : board.lines) ordered += static_cast<std::size_t>(line.quantity);
    CHECK(made.size() == ordered);
    for (const auto& [copy, count] : made) CHECK(count == 1);
  }
}

// Makes the cuts one after the other on a sheet of board; what is left must be the parts.
std::multiset<std::pair<std::int64_t, std::int64_t>> cut_by_hand(
    const PlannedSheet& planned, const std::vector<NumberedCut>& cuts) {
  std::vector<Rect> pieces{{{}, {}, planned.width, planned.height}};
  for (const NumberedCut& cut : cuts) {
    if (cut.check) {  // nothing comes off a sheet that is as large as it should be
      CHECK(std::any_of(pieces.begin(), pieces.end(), [&](const Rect& piece) {
        return cut.upright()
                   ? cut.from == Point{piece.right, piece.top} && cut.stop == piece.width()
                   : cut.from == Point{piece.left, piece.bottom} && cut.stop == piece.height();
      }));
      continue;
    }
    std::size_t at = pieces.size();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const Rect& piece = pieces[i];
      const bool edge_to_edge = cut.upright()
                                    ? cut.from.y == piece.top && cut.to.y == piece.bottom &&
                                          cut.from.x > piece.left && cut.from.x < piece.right
                                    : cut.from.x == piece.left && cut.to.x == piece.right &&
                                          cut.from.y > piece.top && cut.from.y < piece.bottom;
      if (edge_to_edge) at = i;
    }
    INFO("cut " << cut.number);
    REQUIRE(at < pieces.size());
    CHECK(pieces[at].width() == cut.piece_width);
    CHECK(pieces[at].height() == cut.piece_height);
    Rect rest = pieces[at];
    if (cut.upright()) {
      pieces[at].right = cut.from.x;
      rest.left = cut.from.x;
      CHECK((cut.rest_at_stop ? rest.width() : pieces[at].width()) == cut.stop);
    } else {
      pieces[at].bottom = cut.from.y;
      rest.top = cut.from.y;
      CHECK((cut.rest_at_stop ? rest.height() : pieces[at].height()) == cut.stop);
    }
    pieces.push_back(rest);
  }
  std::multiset<std::pair<std::int64_t, std::int64_t>> sizes;
  for (const Rect& piece : pieces) sizes.insert({piece.width().ticks(), piece.height().ticks()});
  return sizes;
}

}  // namespace

TEST_CASE("blanks of one board from several orders share its sheets") {
  const std::vector<BlankOrder> orders = {
      blank("A-1", oat, inches(16), inches(20), 2), blank("A-2", oat, inches(16), inches(20), 1),
      blank("A-3", slate, inches(16), inches(20), 1), blank("A-4", oat, inches(16), inches(20), 1)};
  const auto plan = plan_sheets(orders, shop(), {}, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, {});
  REQUIRE(plan->boards.size() == 2);
  CHECK(plan->boards[0].board.name == "Oat");
  CHECK(plan->boards[0].sheets.size() == 1);
  CHECK(plan->boards[0].cost == 1200);
  CHECK(plan->cost() == 2600);
  CHECK(plan->bound() == 2600);
  CHECK(plan->boards[1].sheets[0].number == 2);
}

TEST_CASE("the fallout of a large mat becomes the blank of a small one") {
  BlankOrder large = blank("B-1", oat, inches(32), inches(40), 1);
  large.fallouts = {{inches(24), inches(30), 1}};
  BlankOrder middle = blank("B-2", oat, inches(24), inches(30), 1);
  middle.fallouts = {{inches(12), inches(16), 1}};
  const std::vector<BlankOrder> orders = {blank("B-3", oat, inches(11), inches(14), 1), middle,
                                          large};
  const auto plan = plan_sheets(orders, shop(), {}, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, {});
  const BoardPlan& board = plan->boards[0];
  REQUIRE(board.sheets.size() == 3);
  CHECK(board.cost == 1200);
  CHECK(board.cost_without_fallouts == 2400);
  for (std::size_t i = 0; i < 3; ++i) CHECK(board.sheets[i].stage == static_cast<int>(i) + 1);
  CHECK(board.sheets[0].stock >= 0);
  CHECK(board.sheets[1].parent == BlankCopy{2, 1});
  CHECK(board.sheets[2].parent == BlankCopy{1, 1});
}

TEST_CASE("fallouts are left alone when they are not to be used") {
  BlankOrder large = blank("B-1", oat, inches(32), inches(40), 1);
  large.fallouts = {{inches(24), inches(30), 1}};
  SheetPlanOptions options = quick();
  options.reuse_fallouts = false;
  const auto plan =
      plan_sheets({large, blank("B-2", oat, inches(24), inches(30), 1)}, shop(), {}, {}, options);
  REQUIRE(plan);
  CHECK(plan->boards[0].cost == 2400);
}

TEST_CASE("each fallout is used once, and only after its own parent") {
  BlankOrder parent = blank("C-1", oat, inches(32), inches(40), 3);
  parent.fallouts = {{inches(9), inches(12), 1}, {inches(9), inches(12), 2}};
  const std::vector<BlankOrder> orders = {parent, blank("C-2", oat, inches(8), inches(10), 6)};
  const auto plan = plan_sheets(orders, shop(), {}, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, {});
  std::set<std::tuple<int, int, int>> used;
  std::map<std::pair<int, int>, int> stage;
  for (const PlannedSheet& planned : plan->boards[0].sheets) {
    if (planned.stock < 0) {
      CHECK(
          used.insert({planned.parent.line, planned.parent.copy, planned.fallout.opening}).second);
      CHECK(stage.at({planned.parent.line, planned.parent.copy}) < planned.stage);
    }
    for (const BlankCopy& copy : planned.blanks) stage[{copy.line, copy.copy}] = planned.stage;
  }
  CHECK(used.size() == 6);
}

TEST_CASE("a fallout loses its bevel by numbered cuts before blanks are cut from it") {
  BlankOrder parent = blank("C-1", oat, inches(32), inches(40), 1);
  parent.fallouts = {{inches(9), inches(12), 1}};
  const auto plan =
      plan_sheets({parent, blank("C-2", oat, inches(9), inches(10), 1)}, shop(), {}, {}, quick());
  REQUIRE(plan);
  const PlannedSheet& fallout = plan->boards[0].sheets.at(1);
  REQUIRE(fallout.stock < 0);
  const std::vector<NumberedCut> cuts = cuts_of(fallout, {});
  REQUIRE(cuts.size() == 5);
  // Two edges a margin inside those of the back, by a line; two with the new edges at the stop.
  for (int i = 0; i < 4; ++i) {
    CHECK(cuts[static_cast<std::size_t>(i)].bevel);
    CHECK(cuts[static_cast<std::size_t>(i)].marked == (i < 2));
  }
  CHECK(cuts[0].stop == fallout_margin);
  CHECK(cuts[0].piece_width == inches(9) + fallout_margin * 2);
  CHECK(cuts[0].piece_height == inches(12) + fallout_margin * 2);
  CHECK(cuts[1].piece_width == inches(9) + fallout_margin);
  CHECK(cuts[2].stop == inches(9));
  CHECK(cuts[3].stop == inches(12));
  CHECK(cuts[3].piece_width == inches(9));
  CHECK_FALSE(cuts[4].bevel);
  PlannedSheet round = fallout;
  round.fallout.square = false;
  CHECK(cuts_of(round, {})[0].stop == Length());
}

TEST_CASE("the numbered cuts, made one after the other, leave the blanks and the waste") {
  Stock stock = shop();
  stock.pieces[0].trim = {sixty_fourths(32), Length(), sixty_fourths(16), inches(1)};
  const std::vector<BlankOrder> orders = {blank("D-1", oat, inches(11), inches(14), 5),
                                          blank("D-2", oat, inches(8), inches(10), 7),
                                          blank("D-3", oat, inches(16), inches(20), 2)};
  const SheetCutter cutter{{}, inches(24)};
  const auto plan = plan_sheets(orders, stock, cutter, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, cutter);
  for (const PlannedSheet& planned : plan->boards[0].sheets) {
    const std::vector<NumberedCut> cuts = cuts_of(planned, cutter);
    auto left = cut_by_hand(planned, cuts);
    for (const PlacedBlank& placed : blanks_in(planned.pattern, Length())) {
      const auto found = left.find({placed.width.ticks(), placed.height.ticks()});
      REQUIRE(found != left.end());
      left.erase(found);
    }
    for (const Leftover& leftover : leftovers_of(planned, Length(), {})) {
      const auto found = left.find({leftover.rect.width().ticks(), leftover.rect.height().ticks()});
      REQUIRE(found != left.end());
      left.erase(found);
    }
    std::size_t trims = 0;
    for (const NumberedCut& cut : cuts) {
      CHECK(cut.number == static_cast<int>(&cut - cuts.data()) + 1);
      if (cut.trim) ++trims;
      CHECK((cut.marked || cut.stop <= inches(24)));
    }
    CHECK(left.size() == trims);  // the damaged strips
  }
}

TEST_CASE("no cut is longer than the cutter can make") {
  const SheetCutter cutter{{Length(), inches(40)}, {}};
  Stock stock = shop();
  stock.pieces.erase(stock.pieces.begin());  // only 40 x 60 in of oat
  const auto plan =
      plan_sheets({blank("E-1", oat, inches(30), inches(38), 3)}, stock, cutter, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, cutter);
  for (const PlannedSheet& planned : plan->boards[0].sheets) {
    for (const NumberedCut& cut : cuts_of(planned, cutter)) {
      CHECK((cut.upright() ? cut.piece_height : cut.piece_width) <= inches(40));
    }
  }
}

TEST_CASE("a damaged edge too long for one cut is trimmed part by part after a cut across") {
  const SheetCutter cutter{{Length(), inches(48)}, {}};
  Stock stock = shop();
  stock.pieces[1].trim.left = sixty_fourths(16);
  const auto plan =
      plan_sheets({blank("E-1", oat, inches(36), inches(46), 1)}, stock, cutter, {}, quick());
  REQUIRE(plan);
  CHECK(plan->notes.empty());
  const PlannedSheet& sheet = plan->boards[0].sheets.at(0);
  const std::vector<NumberedCut> cuts = cuts_of(sheet, cutter);
  REQUIRE(cuts.size() >= 3);
  CHECK_FALSE(cuts[0].upright());
  CHECK(cuts[0].stop == inches(46));
  CHECK(cuts[0].piece_width == inches(40));
  CHECK(cuts[1].trim);
  CHECK(cuts[1].piece_height == inches(46));
  auto left = cut_by_hand(sheet, cuts);
  CHECK(left.count({inches(36).ticks(), inches(46).ticks()}) == 1);
  for (const NumberedCut& cut : cuts) {
    CHECK((cut.upright() ? cut.piece_height : cut.piece_width) <= inches(48));
  }
}

TEST_CASE("no blank is measured by what remains of a sheet") {
  // Of a sheet that is 1/8 in larger than its maker says, both ways, the blanks are right.
  Stock stock = shop();
  stock.pieces.erase(stock.pieces.begin() + 1);  // no oversize
  const std::vector<BlankOrder> orders = {
      blank("G-1", oat, inches(32), inches(40), 1), blank("G-2", oat, inches(16), inches(40), 2),
      blank("G-3", oat, inches(32), inches(13), 2), blank("G-4", oat, inches(9), inches(11), 7)};
  const auto plan = plan_sheets(orders, stock, {}, {}, quick());
  REQUIRE(plan);
  std::map<std::pair<std::int64_t, std::int64_t>, int> wanted;
  for (const BlankOrder& order : orders)
    wanted[{order.width.ticks(), order.height.ticks()}] += order.quantity;
  const Length more = sixty_fourths(8);
  std::size_t checks = 0;
  for (const PlannedSheet& planned : plan->boards[0].sheets) {
    // Cuts are lines from the sheet's upper left corner, so a part's size is what its cut set; what
    // reaches the far edges is larger unless a check cut, whose line is where it is, took it off.
    std::vector<Rect> pieces{{{}, {}, planned.width + more, planned.height + more}};
    for (const NumberedCut& cut : cuts_of(planned, {})) {
      if (cut.check) ++checks;
      const auto at = std::find_if(pieces.begin(), pieces.end(), [&](const Rect& piece) {
        return cut.upright()
                   ? piece.left < cut.from.x && cut.from.x < piece.right && piece.top == cut.from.y
                   : piece.top < cut.from.y && cut.from.y < piece.bottom &&
                         piece.left == cut.from.x;
      });
      INFO("cut " << cut.number);
      REQUIRE(at != pieces.end());
      Rect rest = *at;
      (cut.upright() ? at->right : at->bottom) = cut.upright() ? cut.from.x : cut.from.y;
      (cut.upright() ? rest.left : rest.top) = cut.upright() ? cut.from.x : cut.from.y;
      pieces.push_back(rest);
    }
    for (const Rect& piece : pieces) {
      for (const auto& size : {std::pair{piece.width().ticks(), piece.height().ticks()},
                               std::pair{piece.height().ticks(), piece.width().ticks()}}) {
        const auto found = wanted.find(size);
        if (found == wanted.end() || found->second == 0) continue;
        --found->second;
        break;
      }
    }
  }
  CHECK(checks > 0);
  for (const auto& [size, count] : wanted) CHECK(count == 0);
}

TEST_CASE("where waste is left beside every blank, no cut is there for a check") {
  const auto plan =
      plan_sheets({blank("G-5", oat, inches(11), inches(13), 5)}, shop(), {}, {}, quick());
  REQUIRE(plan);
  for (const PlannedSheet& planned : plan->boards[0].sheets) {
    for (const NumberedCut& cut : cuts_of(planned, {})) CHECK_FALSE(cut.check);
  }
}

TEST_CASE("a damaged edge that cannot be trimmed leaves the sheet out with a warning") {
  const SheetCutter cutter{{Length(), inches(38)}, {}};
  Stock stock = shop();
  stock.pieces[1].trim.left = inches(1);
  const auto plan =
      plan_sheets({blank("E-1", oat, inches(30), inches(38), 1)}, stock, cutter, {}, quick());
  REQUIRE(plan);
  REQUIRE(plan->notes.size() == 1);
  CHECK(plan->notes[0].code == "sheets-trim-too-long");
}

TEST_CASE("a board that the stock does not list is named with the nearest one") {
  Board oak = oat;
  oak.name = "Oath";
  const auto plan = plan_sheets({blank("F-1", oak, inches(8), inches(10), 1)}, shop(), {}, {});
  REQUIRE(!plan);
  CHECK(plan.error()[0].message ==
        "order F-1, Top mat: found no sheet of Oath, #f2eee3, 1/16 in in the stock; did you mean "
        "\"Oat\"?");
}

TEST_CASE("a board of another thickness is not the same board") {
  Board thick = oat;
  thick.thickness = sixty_fourths(8);
  const auto plan = plan_sheets({blank("F-1", thick, inches(8), inches(10), 1)}, shop(), {}, {});
  REQUIRE(!plan);
  CHECK(plan.error()[0].message ==
        "order F-1, Top mat: found no sheet of Oat, #f2eee3, 1/8 in in the stock; it lists Oat, "
        "#f2eee3, 1/16 in");
}

TEST_CASE("a blank larger than every sheet is an error that names its order") {
  const auto plan = plan_sheets({blank("F-1", oat, inches(41), inches(41), 1)}, shop(), {}, {});
  REQUIRE(!plan);
  CHECK(plan.error()[0].message ==
        "order F-1, Top mat: a blank of 41 x 41 in cannot be cut from any sheet of Oat, #f2eee3, "
        "1/16 in");
}

TEST_CASE("blanks beyond the sheets on hand are listed as missing, and no fallout stands in") {
  Stock stock;
  stock.pieces = {sheet("last", oat, inches(32), inches(40), 1200, 1)};
  BlankOrder large = blank("G-1", oat, inches(30), inches(36), 2);
  large.fallouts = {{inches(20), inches(24), 1}};
  const auto plan =
      plan_sheets({large, blank("G-2", oat, inches(16), inches(20), 2)}, stock, {}, {}, quick());
  REQUIRE(plan);
  check_copies(*plan, {});
  CHECK(plan->boards[0].sheets.size() == 1);
  CHECK(plan->boards[0].missing.size() == 3);
}

TEST_CASE("off-cuts of 8 x 10 in or more are kept, smaller ones are not") {
  const auto plan = plan_sheets({blank("H-1", oat, inches(26), inches(40), 1)}, shop(), {}, {});
  REQUIRE(plan);
  const auto narrow = leftovers_of(plan->boards[0].sheets[0], Length(), {});
  REQUIRE(narrow.size() == 1);
  CHECK(narrow[0].rect == Rect{inches(26), Length(), inches(32), inches(40)});
  CHECK(!narrow[0].keep);
  const auto wide = leftovers_of(plan->boards[0].sheets[0], Length(), {inches(6), inches(10)});
  CHECK(wide[0].keep);
}

TEST_CASE("board that is on the rack is cut before the same board is bought at the same price") {
  // Whichever of the two is listed first, with 3 of 5 sheets on the rack.
  for (const bool rack_first : {true, false}) {
    Stock stock;
    stock.pieces = {sheet("bought", oat, inches(32), inches(40), 1200),
                    sheet("rack", oat, inches(32), inches(40), 1200, 3)};
    if (rack_first) std::swap(stock.pieces[0], stock.pieces[1]);
    const auto plan =
        plan_sheets({blank("A-1", oat, inches(30), inches(38), 5)}, stock, {}, {}, quick());
    REQUIRE(plan);
    std::map<std::string, int> used;
    for (const PlannedSheet& planned : plan->boards.at(0).sheets) {
      ++used[stock.pieces.at(static_cast<std::size_t>(planned.stock)).id];
    }
    CHECK(used == std::map<std::string, int>{{"rack", 3}, {"bought", 2}});
    CHECK(plan->cost() == 6000);
  }
}

TEST_CASE("a board of which none is on hand is short, not unknown") {
  Stock stock;
  stock.pieces = {sheet("a", oat, inches(32), inches(40), 1200, 0)};
  const auto plan =
      plan_sheets({blank("A-1", oat, inches(16), inches(20), 2)}, stock, {}, {}, quick());
  REQUIRE(plan);
  CHECK(plan->boards.at(0).missing.size() == 2);
  CHECK(!plan->is_complete());
  const auto too_large =
      plan_sheets({blank("A-1", oat, inches(41), inches(20), 2)}, stock, {}, {}, quick());
  REQUIRE(!too_large);
  CHECK(too_large.error().at(0).code == "sheets-blank-too-large");
}

TEST_CASE("a board is found by name though no colour is stated, and 1.5 and 1.6 mm are 1/16 in") {
  Stock stock;
  Board open = oat;
  open.any_colour = true;
  stock.pieces = {sheet("a", open, inches(32), inches(40), 1200)};
  const Board red{"Oat", {0xff, 0, 0}, Length::from_ticks(16 * ticks_per_mm / 10)};
  const Board scarlet{"Oat", red.colour, oat.thickness};
  CHECK(listed_board(red, stock) == open);
  CHECK(listed_board({"Oat", {}, Length::from_ticks(15 * ticks_per_mm / 10)}, stock) == open);
  CHECK(!listed_board({"Oat", {}, Length::from_ticks(14 * ticks_per_mm / 10)}, stock));
  CHECK(!listed_board({"Oats", {}, sixty_fourths(4)}, stock));
  // Colours that the stock tells apart, and a layer that states none.
  stock.pieces = {sheet("a", oat, inches(32), inches(40), 1200),
                  sheet("b", scarlet, inches(32), inches(40), 1200)};
  CHECK(listed_board(red, stock) == scarlet);
  CHECK(!listed_board(open, stock));
  stock.pieces.pop_back();
  CHECK(listed_board(open, stock) == oat);
  CHECK(!listed_board(red, stock));
  const auto plan = plan_sheets(
      {blank("A-1", open, inches(16), inches(20), 1), blank("A-2", oat, inches(16), inches(20), 1)},
      stock, {}, {}, quick());
  REQUIRE(plan);
  CHECK(plan->boards.size() == 1);
}

TEST_CASE("an off-cut that counts for something is not cut where a smaller one does") {
  Stock stock = shop();
  const auto offcut = [](const std::string& id, Length width, Length height) {
    StockPiece piece = sheet(id, oat, width, height, 0, 1);
    piece.offcut = true;
    return piece;
  };
  stock.pieces.push_back(offcut("large", inches(30), inches(24)));
  stock.pieces.push_back(offcut("small", inches(11), inches(14)));
  const std::vector<BlankOrder> wanted = {blank("A-1", oat, inches(10), inches(13), 1)};
  for (const int percent : {1, 30, 100}) {
    stock.offcut_percent = percent;
    const Stock valued = with_offcut_values(stock, {});
    // The standard sheet is the cheapest by area: 1200 for 1280 sq in.
    CHECK(valued.pieces.at(4).price == (11 * 14 * 1200 * percent + 1280 * 100 / 2) / (1280 * 100));
    const auto plan = plan_sheets(wanted, valued, {}, {}, quick());
    REQUIRE(plan);
    CHECK(stock.pieces.at(static_cast<std::size_t>(plan->boards.at(0).sheets.at(0).stock)).id ==
          "small");
  }
  CHECK(offcut_value(stock, oat, inches(8), inches(9), {}) == 0);  // not worth keeping
  CHECK(offcut_value(stock, slate, inches(32), inches(40), {}) == 1400);
}
