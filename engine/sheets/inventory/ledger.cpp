#include "engine/sheets/inventory/ledger.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <set>

#include "engine/file/input.h"
#include "engine/sheets/inventory/inventory.h"
#include "engine/xml/colour.h"
#include "engine/xml/reading.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

using Json = nlohmann::ordered_json;

struct ActWord {
  Act act;
  const char* word;
};
constexpr std::array<ActWord, 8> act_words{{{Act::opened, "opened"},
                                            {Act::cut, "cut"},
                                            {Act::spoiled, "spoiled"},
                                            {Act::taken, "taken"},
                                            {Act::returned, "returned"},
                                            {Act::lost, "lost"},
                                            {Act::corrected, "corrected"},
                                            {Act::undone, "undone"}}};

// --- writing -------------------------------------------------------------------------------------

Json piece_json(const StockPiece& piece) {
  const auto exact = [](Length length) {
    const Length hundredth_mm = Length::from_ticks(ticks_per_mm / 100);
    const bool metric = length.ticks() % hundredth_mm.ticks() == 0 &&
                        length.ticks() % sixty_fourths(1).ticks() != 0;
    return format_exact(length, metric ? Unit::millimetre : Unit::inch);
  };
  Json json{
      {"id", piece.id}, {"kind", piece.offcut ? "offcut" : "sheet"}, {"board", piece.board.name}};
  if (!piece.board.any_colour) json["colour"] = format_colour(piece.board.colour);
  json["thickness"] = exact(piece.board.thickness);
  json["width"] = exact(piece.width);
  json["height"] = exact(piece.height);
  if (piece.trim != Sides{}) {
    json["trim"] = {exact(piece.trim.left), exact(piece.trim.top), exact(piece.trim.right),
                    exact(piece.trim.bottom)};
  }
  if (piece.stated_price) json["price"] = format_price(piece.price, "");
  if (piece.on_hand) json["onHand"] = *piece.on_hand;
  if (!piece.supplier.empty()) json["supplier"] = piece.supplier;
  if (piece.pack != 1) json["pack"] = piece.pack;
  return json;
}

Json json_of(const std::optional<StockPiece>& piece) {
  return piece ? piece_json(*piece) : Json();
}

// --- reading: whatever is not as it should be throws, and the line is damaged --------------------

struct Damaged {
  std::string why;
};

Length length_in(const Json& json) {
  const auto length = parse_length(json.get<std::string>(), Unit::inch);
  if (!length) throw Damaged{length.error()};
  return *length;
}

StockPiece piece_in(const Json& json) {
  StockPiece piece;
  piece.id = json.at("id").get<std::string>();
  piece.offcut = json.at("kind").get<std::string>() == "offcut";
  piece.board.name = json.at("board").get<std::string>();
  piece.board.colour = Layer{}.colour;
  piece.board.any_colour = !json.contains("colour");
  if (!piece.board.any_colour) {
    const auto colour = parse_colour(json.at("colour").get<std::string>());
    if (!colour) throw Damaged{colour.error()};
    piece.board.colour = *colour;
  }
  piece.board.thickness = length_in(json.at("thickness"));
  piece.width = length_in(json.at("width"));
  piece.height = length_in(json.at("height"));
  if (json.contains("trim")) {
    const Json& trim = json.at("trim");
    piece.trim = {length_in(trim.at(0)), length_in(trim.at(1)), length_in(trim.at(2)),
                  length_in(trim.at(3))};
  }
  piece.stated_price = json.contains("price");
  if (piece.stated_price) {
    const auto price = parse_price(json.at("price").get<std::string>());
    if (!price) throw Damaged{"found a price that cannot be read"};
    piece.price = *price;
  }
  if (json.contains("onHand")) piece.on_hand = json.at("onHand").get<int>();
  piece.supplier = json.value("supplier", "");
  piece.pack = json.value("pack", 1);
  return piece;
}

std::optional<StockPiece> optional_piece_in(const Json& json) {
  return json.is_null() ? std::nullopt : std::optional(piece_in(json));
}

Unit unit_in(const std::string& word) {
  for (const Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
    if (word == word_for(unit)) return unit;
  }
  throw Damaged{"found the unit \"" + word + "\""};
}

LedgerLine line_in(const Json& json) {
  LedgerLine line;
  line.number = json.at("number").get<int>();
  const std::string word = json.at("act").get<std::string>();
  const auto known = std::find_if(act_words.begin(), act_words.end(),
                                  [&](const ActWord& one) { return word == one.word; });
  if (known == act_words.end()) throw Damaged{"found the act \"" + word + "\""};
  line.act = known->act;
  line.time = json.at("time").get<std::string>();
  if (json.contains("stock")) {
    const Json& stock = json.at("stock");
    line.stock = {unit_in(stock.at("unit").get<std::string>()),
                  stock.at("currency").get<std::string>(), stock.at("offcutValue").get<int>()};
  }
  for (const Json& change : json.at("changes")) {
    line.changes.push_back(
        {optional_piece_in(change.at("was")), optional_piece_in(change.at("is"))});
  }
  if (json.contains("orders")) {
    for (const Json& order : json.at("orders")) {
      line.orders.push_back({order.at("order").get<std::string>(), order.at("mats").get<int>(),
                             order.at("of").get<int>()});
    }
  }
  if (json.contains("bought")) {
    for (const Json& bought : json.at("bought")) {
      line.bought.push_back({bought.at("id").get<std::string>(), bought.at("sheets").get<int>()});
    }
  }
  line.undoes = json.value("undoes", 0);
  return line;
}

void check_follows(const Ledger& ledger, const LedgerLine& line) {
  const bool first = ledger.lines.empty();
  if (line.number != static_cast<int>(ledger.lines.size()) + 1) {
    throw Damaged{"found the number " + std::to_string(line.number)};
  }
  if (first != (line.act == Act::opened)) throw Damaged{"it does not follow from those before"};
  if (line.undoes < 0 || line.undoes >= line.number) {
    throw Damaged{"found that it undoes line " + std::to_string(line.undoes)};
  }
  for (const PieceChange& change : line.changes) {
    if (!change.was && !change.is) throw Damaged{"found a change of nothing"};
    const std::string& id = change.was ? change.was->id : change.is->id;
    const auto present = ledger.pieces.find(id);
    const bool as_said =
        change.was ? present != ledger.pieces.end() && same_piece(present->second, *change.was)
                   : present == ledger.pieces.end();
    if (!as_said || (change.is && change.is->id != id)) {
      throw Damaged{"what it says of piece " + mullion::quoted(id) +
                    " does not follow from the lines before"};
    }
  }
}

Problem damage(const std::string& file, int line, const std::string& why) {
  return {Severity::error,
          "ledger-damaged",
          "the ledger is damaged in this line: " + why,
          {line, 1},
          file};
}

std::set<int> undone_lines(const Ledger& ledger) {
  std::set<int> numbers;
  for (const LedgerLine& line : ledger.lines) {
    if (line.act == Act::undone) numbers.insert(line.undoes);
  }
  return numbers;
}

}  // namespace

const char* word_for(Act act) {
  return act_words[static_cast<std::size_t>(act)].word;
}

std::string ledger_path(const std::string& stock_path) {
  return stock_path + ".ledger";
}

std::string format_line(const LedgerLine& line) {
  Json json{{"number", line.number}, {"act", word_for(line.act)}, {"time", line.time}};
  if (line.stock) {
    json["stock"] = {{"unit", word_for(line.stock->unit)},
                     {"currency", line.stock->currency},
                     {"offcutValue", line.stock->offcut_percent}};
  }
  for (const CutMats& order : line.orders) {
    json["orders"].push_back({{"order", order.order}, {"mats", order.mats}, {"of", order.of}});
  }
  for (const Bought& bought : line.bought) {
    json["bought"].push_back({{"id", bought.id}, {"sheets", bought.sheets}});
  }
  if (line.undoes > 0) json["undoes"] = line.undoes;
  json["changes"] = Json::array();
  for (const PieceChange& change : line.changes) {
    json["changes"].push_back({{"was", json_of(change.was)}, {"is", json_of(change.is)}});
  }
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

void add_line(Ledger& ledger, LedgerLine line) {
  if (line.stock) ledger.head = *line.stock;
  for (const PieceChange& change : line.changes) {
    if (change.is) {
      ledger.pieces[change.is->id] = ledger.last[change.is->id] = *change.is;
    } else {
      ledger.pieces.erase(change.was->id);
    }
  }
  ledger.lines.push_back(std::move(line));
}

Result<Ledger> parse_ledger(std::string_view text, const std::string& file) {
  Ledger ledger;
  int number = 0;
  for (std::size_t at = 0; at < text.size();) {
    ++number;
    const std::size_t end = text.find('\n', at);
    if (end == std::string_view::npos) {
      return tl::unexpected(Problems{damage(file, number, "it has no end")});
    }
    try {
      LedgerLine line = line_in(Json::parse(text.substr(at, end - at)));
      check_follows(ledger, line);
      add_line(ledger, std::move(line));
    } catch (const Damaged& fault) {
      return tl::unexpected(Problems{damage(file, number, fault.why)});
    } catch (const Json::exception&) {
      return tl::unexpected(
          Problems{damage(file, number, "found no JSON object as a line of the ledger is")});
    }
    at = end + 1;
  }
  return ledger;
}

Result<Ledger> read_ledger(const std::string& stock_path) {
  const std::string path = ledger_path(stock_path);
  if (::access(path.c_str(), F_OK) != 0) return Ledger{};
  const auto bytes = read_input(path, largest_ledger);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_ledger(*bytes, path);
}

Stock stock_of(const Ledger& ledger) {
  Stock stock;
  stock.unit = ledger.head.unit;
  stock.currency = ledger.head.currency;
  stock.offcut_percent = ledger.head.offcut_percent;
  for (const auto& [id, piece] : ledger.pieces) stock.pieces.push_back(piece);
  return stock;
}

std::vector<PieceChange> changes_between(const std::vector<StockPiece>& before,
                                         const std::vector<StockPiece>& after) {
  std::map<std::string, PieceChange> changes;
  for (const StockPiece& piece : before) changes[piece.id].was = piece;
  for (const StockPiece& piece : after) changes[piece.id].is = piece;
  std::vector<PieceChange> found;
  for (auto& [id, change] : changes) {
    if (change.was && change.is && same_piece(*change.was, *change.is)) continue;
    found.push_back(std::move(change));
  }
  return found;
}

const LedgerLine* last_to_undo(const Ledger& ledger) {
  const std::set<int> undone = undone_lines(ledger);
  for (auto line = ledger.lines.rbegin(); line != ledger.lines.rend(); ++line) {
    const bool by_us =
        line->act != Act::opened && line->act != Act::corrected && line->act != Act::undone;
    if (by_us && !undone.contains(line->number)) return &*line;
  }
  return nullptr;
}

Result<Stock> without_act(const Stock& stock, const LedgerLine& line) {
  Stock after = stock;
  for (const PieceChange& change : line.changes) {
    const std::string& id = change.was ? change.was->id : change.is->id;
    const auto piece = std::find_if(after.pieces.begin(), after.pieces.end(),
                                    [&](const StockPiece& one) { return one.id == id; });
    if (piece == after.pieces.end() && change.was && !change.is) {
      after.pieces.push_back(*change.was);
      continue;
    }
    const int more = (change.was ? change.was->on_hand.value_or(0) : 0) -
                     (change.is ? change.is->on_hand.value_or(0) : 0);
    if (piece == after.pieces.end() || !piece->on_hand || *piece->on_hand + more < 0) {
      return tl::unexpected(
          Problems{{Severity::error,
                    "stock-cannot-undo",
                    std::string("cannot undo what was ") + word_for(line.act) + " in line " +
                        std::to_string(line.number) + " of the ledger: piece " +
                        mullion::quoted(id) + " is no longer there",
                    {},
                    stock.file}});
    }
    *piece->on_hand += more;
    if (piece->offcut && *piece->on_hand == 0) after.pieces.erase(piece);
  }
  return after;
}

const LedgerLine* cut_before(const Ledger& ledger, const std::string& order, int mats) {
  const std::set<int> undone = undone_lines(ledger);
  const LedgerLine* last = nullptr;
  int owed = 0;
  for (const LedgerLine& line : ledger.lines) {
    if (line.act != Act::cut || undone.contains(line.number)) continue;
    for (const CutMats& cut : line.orders) {
      if (cut.order != order) continue;
      owed = cut.of <= owed ? owed - cut.mats : cut.of - cut.mats;
      last = &line;
    }
  }
  return last != nullptr && mats > owed ? last : nullptr;
}

}  // namespace mullion
