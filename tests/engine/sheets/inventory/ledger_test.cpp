#include "engine/sheets/inventory/ledger.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <random>
#include <set>
#include <sstream>

#include "engine/sheets/inventory/ledger_text.h"
#include "engine/sheets/inventory/rack.h"
#include "engine/sheets/inventory/stock_file.h"
#include "tests/how_many.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::string shop =
    "<?xml version=\"1.0\"?>\r\n<!-- the shop's racks -->\r\n"
    "<stock currency=\"EUR\" unit='in'>\r\n"
    "  <board name=\"Oat &amp; rye\" colour=\"#ece5d4\">  <!-- bay 1 -->\r\n"
    "    <sheet id=\"oat\" width=\"32\" height=\"40\" on-hand='5'/> <!-- count on Mondays -->\r\n"
    "    <offcut id=\"c-1\" width=\"16\" height=\"1000 mm\"/><offcut id=\"c-2\" width=\"9\" "
    "height=\"11\" on-hand=\"3\" trim=\"1/8\"></offcut>\r\n"
    "  </board>\r\n"
    "  <board name=\"Slate\"/>\r\n"
    "</stock>\r\n";

std::string shop_file(const std::string& name) {
  const std::string path = oracle::scratch_folder(name) + "/stock.xml";
  oracle::write_file(path, shop);
  return path;
}

StockPiece offcut(const std::string& id, const Board& board, Length width, Length height) {
  StockPiece piece;
  piece.id = id;
  piece.board = board;
  piece.width = width;
  piece.height = height;
  piece.on_hand = 1;
  piece.offcut = true;
  return piece;
}

Deed deed(Act act) {
  Deed out;
  out.act = act;
  out.time = "2026-03-02T16:05:00Z";
  return out;
}

Deed cut_of(const std::string& order, int mats, int of) {
  Deed out = deed(Act::cut);
  out.orders = {{order, mats, of}};
  return out;
}

Result<StockFile> scan(const std::string& path, const std::string& code, Act act) {
  Result<StockFile> file = StockFile::open(path);
  REQUIRE(file);
  const auto move = move_piece(file->stock(), file->ledger(), code, act);
  if (!move) return tl::unexpected(move.error());
  REQUIRE(file->commit(move->stock, deed(act)));
  return file;
}

std::string code_of(const Problems& problems) {
  return problems.at(0).code;
}

}  // namespace

TEST_CASE("a change of the stock leaves every other byte of its file") {
  const auto before = parse_stock(shop, "stock.xml");
  REQUIRE(before);
  CHECK(edited_stock(shop, *before, *before) == shop);

  Stock after = *before;
  after.pieces[0].on_hand = 4;
  after.pieces[2].on_hand = 2;
  after.pieces.erase(after.pieces.begin() + 1);
  const Board slate{"Slate", Layer{}.colour, sixty_fourths(4), true};
  after.pieces.push_back(offcut("n-1", after.pieces[0].board, inches(10), inches(12)));
  after.pieces.push_back(offcut("n-2", slate, inches(20), millimetres(300)));
  std::string wanted = shop;
  const auto put = [&wanted](const std::string& from, const std::string& to) {
    REQUIRE(wanted.find(from) != std::string::npos);
    wanted.replace(wanted.find(from), from.size(), to);
  };
  put("on-hand='5'", "on-hand='4'");
  put("\r\n    <offcut id=\"c-1\" width=\"16\" height=\"1000 mm\"/>", "");
  put("on-hand=\"3\"", "on-hand=\"2\"");
  put("></offcut>", "></offcut>\n    <offcut id=\"n-1\" width=\"10\" height=\"12\"/>");
  put("<board name=\"Slate\"/>",
      "<board name=\"Slate\">\r\n    <offcut id=\"n-2\" width=\"20\" height=\"300 mm\"/>\r\n  "
      "</board>");
  CHECK(edited_stock(shop, *before, after) == wanted);
}

TEST_CASE("the lines of the ledger are JSON objects in which nothing of the act is missing") {
  const std::string path = shop_file("ledger_lines");
  auto file = StockFile::open(path);
  REQUIRE(file);
  Stock next = file->stock();
  --*next.pieces[0].on_hand;
  next.pieces.push_back(offcut("offcut-1", next.pieces[0].board, inches(10), millimetres(300)));
  REQUIRE(file->commit(next, cut_of("A-1", 2, 3)));
  std::istringstream lines(oracle::read_file(path + ".ledger"));
  std::string line;
  REQUIRE(std::getline(lines, line));
  const auto opened = nlohmann::json::parse(line);
  CHECK(opened["act"] == "opened");
  CHECK(opened["changes"].size() == 3);
  REQUIRE(std::getline(lines, line));
  const auto cut = nlohmann::json::parse(line);
  CHECK(cut == nlohmann::json::parse(R"({"number":2,"act":"cut","time":"2026-03-02T16:05:00Z",
      "orders":[{"order":"A-1","mats":2,"of":3}],
      "changes":[{"was":{"id":"oat","kind":"sheet","board":"Oat & rye","colour":"#ece5d4",
                         "thickness":"1/16 in","width":"32 in","height":"40 in","onHand":5},
                  "is":{"id":"oat","kind":"sheet","board":"Oat & rye","colour":"#ece5d4",
                        "thickness":"1/16 in","width":"32 in","height":"40 in","onHand":4}},
                 {"was":null,
                  "is":{"id":"offcut-1","kind":"offcut","board":"Oat & rye","colour":"#ece5d4",
                        "thickness":"1/16 in","width":"10 in","height":"300 mm","onHand":1}}]})"));
  CHECK(!std::getline(lines, line));
  CHECK(line_text(file->ledger().lines[1]) ==
        "2, 2026-03-02 16:05:00 UTC, cut: A-1 (2 of 3); oat 5 to 4, offcut-1 added, 1 of 254 x 300 "
        "mm");
}

TEST_CASE("what was done is undone act by act, back to the first, and the file is as it was") {
  const std::string path = shop_file("ledger_undo");
  for (const char* code : {"oat", "c-2", "c-1"}) REQUIRE(scan(path, code, Act::taken));
  REQUIRE(scan(path, "c-1", Act::returned));
  auto file = StockFile::open(path);
  REQUIRE(file);
  for (const int line : {5, 4, 3, 2}) {
    const auto undone = file->undo();
    REQUIRE(undone);
    CHECK(undone->number == line);
  }
  const auto nothing = file->undo();
  REQUIRE(!nothing);
  CHECK(code_of(nothing.error()) == "stock-nothing-to-undo");
  const auto first = parse_stock(shop, "stock.xml");
  CHECK(changes_between(first->pieces, file->stock().pieces).empty());
  CHECK(file->ledger().lines.size() == 9);
}

TEST_CASE("an act is not undone when a piece that it put on the rack is gone") {
  const std::string path = shop_file("ledger_cannot_undo");
  auto file = StockFile::open(path);
  REQUIRE(file);
  Stock next = file->stock();
  next.pieces.push_back(offcut("offcut-1", next.pieces[0].board, inches(10), inches(12)));
  REQUIRE(file->commit(next, cut_of("A-1", 1, 1)));
  file = tl::unexpected(Problems{});
  std::string text = oracle::read_file(path);
  const std::string element = "<offcut id=\"offcut-1\" width=\"10\" height=\"12\"/>";
  REQUIRE(text.find(element) != std::string::npos);
  text.erase(text.find(element), element.size());
  oracle::write_file(path, text);
  file = StockFile::open(path);
  REQUIRE(file);
  const auto undone = file->undo();
  REQUIRE(!undone);
  CHECK(code_of(undone.error()) == "stock-cannot-undo");
  CHECK(oracle::read_file(path) == text);
}

TEST_CASE("what somebody edits in the stock file becomes a line of its own with the next act") {
  const std::string path = shop_file("ledger_corrected");
  REQUIRE(scan(path, "oat", Act::taken));
  std::string text = oracle::read_file(path);
  text.replace(text.find("on-hand='4'"), 11, "on-hand='9'");
  oracle::write_file(path, text);
  const auto file = scan(path, "oat", Act::lost);
  REQUIRE(file);
  const auto& lines = file->ledger().lines;
  REQUIRE(lines.size() == 4);
  CHECK(lines[2].act == Act::corrected);
  CHECK(lines[2].changes.at(0).is->on_hand == 9);
  CHECK(lines[3].act == Act::lost);
  CHECK(file->stock().pieces.at(0).on_hand == 8);
}

TEST_CASE("an off-cut that is gone comes back by its code with the size that it had") {
  const std::string path = shop_file("ledger_returned");
  REQUIRE(scan(path, "c-1", Act::taken));
  CHECK(find_piece(read_stock(path)->pieces, "c-1") == nullptr);
  const auto gone = scan(path, "c-1", Act::taken);
  REQUIRE(!gone);
  CHECK(code_of(gone.error()) == "rack-none-left");
  REQUIRE(scan(path, "c-1", Act::returned));
  const auto stock = read_stock(path);
  REQUIRE(find_piece(stock->pieces, "c-1") != nullptr);
  CHECK(find_piece(stock->pieces, "c-1")->height == millimetres(1000));
  const auto unknown = scan(path, "c-3", Act::returned);
  REQUIRE(!unknown);
  CHECK(unknown.error().at(0).message.find("did you mean \"c-") != std::string::npos);
  const auto blank = scan(path, "A-1/2/3", Act::returned);
  REQUIRE(!blank);
  CHECK(blank.error().at(0).message.find("that of a blank") != std::string::npos);
}

TEST_CASE("an order is cut once, and the rest of one that was not made whole once more") {
  Ledger ledger;
  const auto cut = [&ledger](int mats, int of, Act act = Act::cut) {
    LedgerLine line;
    line.number = static_cast<int>(ledger.lines.size()) + 1;
    line.act = act;
    line.orders = {{"A-1", mats, of}};
    add_line(ledger, line);
  };
  CHECK(cut_before(ledger, "A-1", 5) == nullptr);
  cut(3, 5);
  CHECK(cut_before(ledger, "A-2", 5) == nullptr);
  CHECK(cut_before(ledger, "A-1", 2) == nullptr);
  REQUIRE(cut_before(ledger, "A-1", 3) != nullptr);
  CHECK(cut_before(ledger, "A-1", 3)->number == 1);
  cut(1, 2);
  CHECK(cut_before(ledger, "A-1", 1) == nullptr);
  CHECK(cut_before(ledger, "A-1", 2) != nullptr);
  cut(1, 1, Act::spoiled);  // cut anew, so that nothing more of the order is made
  CHECK(cut_before(ledger, "A-1", 1) == nullptr);
  cut(1, 1);
  CHECK(cut_before(ledger, "A-1", 1) != nullptr);
  LedgerLine undone;
  undone.number = 5;
  undone.act = Act::undone;
  undone.undoes = 4;
  add_line(ledger, undone);
  CHECK(cut_before(ledger, "A-1", 1) == nullptr);
}

TEST_CASE("a ledger with a line taken out, changed, cut off or doubled is damaged there") {
  const std::string path = shop_file("ledger_damaged");
  for (const char* code : {"oat", "c-2", "oat"}) REQUIRE(scan(path, code, Act::taken));
  const std::string whole = oracle::read_file(path + ".ledger");
  REQUIRE(parse_ledger(whole, "stock.xml.ledger"));
  std::vector<std::string> lines;
  std::istringstream in(whole);
  for (std::string line; std::getline(in, line);) lines.push_back(line + "\n");
  REQUIRE(lines.size() == 4);
  const auto fault = [](const std::string& text) {
    const auto ledger = parse_ledger(text, "stock.xml.ledger");
    return ledger ? 0 : ledger.error().at(0).place.line;
  };
  CHECK(fault(lines[1] + lines[2] + lines[3]) == 1);
  CHECK(fault(lines[0] + lines[2] + lines[3]) == 2);
  CHECK(fault(lines[0] + lines[1] + lines[1]) == 3);
  CHECK(fault(whole.substr(0, whole.size() - 1)) == 4);
  std::string changed = lines[1];
  changed.replace(changed.find("\"onHand\":5"), 10, "\"onHand\":6");
  CHECK(fault(lines[0] + changed) == 2);
  CHECK(fault("[]\n") == 1);
  CHECK(fault("{}\n") == 1);
  for (std::size_t size = 1; size < whole.size(); ++size) {
    const bool at_a_line = whole[size - 1] == '\n';
    CHECK((fault(whole.substr(0, size)) == 0) == at_a_line);
  }
}

TEST_CASE("after any acts the ledger makes the stock anew, and no id is used twice") {
  std::mt19937 random(7);
  for (int round = 0; round < test::how_many(5, 100); ++round) {
    const std::string path = shop_file("ledger_random");
    std::set<std::string> used = {"oat", "c-1", "c-2"};
    int last = 0;
    for (int act = 0; act < 20; ++act) {
      auto file = StockFile::open(path);
      REQUIRE(file);
      const auto& pieces = file->stock().pieces;
      const auto pick = [&](std::size_t size) { return random() % size; };
      switch (pick(4)) {
        case 0:
          (void)file->undo();
          break;
        case 1: {
          Stock next = file->stock();
          std::string id = "offcut-" + std::to_string(++last);
          CHECK(used.insert(id).second);
          next.pieces.push_back(offcut(id, {"Slate", Layer{}.colour, sixty_fourths(4), true},
                                       inches(1 + static_cast<int>(pick(30))), inches(9)));
          REQUIRE(file->commit(next, cut_of("A-1", 1, 1)));
          break;
        }
        default: {
          const std::vector<std::string> codes(used.begin(), used.end());
          const Act what = pick(2) == 0 ? Act::taken : Act::returned;
          const auto move =
              move_piece(file->stock(), file->ledger(), codes[pick(codes.size())], what);
          if (move) REQUIRE(file->commit(move->stock, deed(what)));
        }
      }
      if (file->ledger().lines.empty()) continue;
      const std::string text = oracle::read_file(path);
      const auto stock = parse_stock(text, path);
      REQUIRE(stock);
      CHECK(changes_between(stock->pieces, pieces).empty());
      const auto ledger = read_ledger(path);
      REQUIRE(ledger);
      CHECK(changes_between(stock_of(*ledger).pieces, pieces).empty());
      for (const char* comment : {"the shop's racks", "bay 1", "count on Mondays"}) {
        CHECK(text.find(comment) != std::string::npos);
      }
      for (const std::string& id : used) {
        const bool there = find_piece(pieces, id) != nullptr;
        const bool known = ledger->last.contains(id);
        CHECK(file->stock().gone_ids.contains(id) == (known && !there));
      }
    }
  }
}
