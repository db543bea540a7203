#include "engine/sheets/inventory/inventory.h"

#include <algorithm>
#include <set>

#include "engine/file/input.h"
#include "engine/job/read.h"
#include "engine/job/usual.h"
#include "engine/xml/document.h"
#include "engine/xml/element.h"

namespace mullion {
namespace {

std::int64_t read_price(Element& element) {
  const auto text = element.value("price");
  if (!text) return 0;
  if (const auto price = parse_price(*text)) return *price;
  element.unexpected("price", "job-bad-price",
                     "a price such as 12.50, up to " + format_price(highest_price, ""));
  return 0;
}

Sides read_trim(Element& element) {
  const Length all = element.length_or("trim", Least::zero, Length());
  return {element.length_or("trim-left", Least::zero, all),
          element.length_or("trim-top", Least::zero, all),
          element.length_or("trim-right", Least::zero, all),
          element.length_or("trim-bottom", Least::zero, all)};
}

void read_piece(Element& element, const Board& board, std::set<std::string>& ids, Stock& stock) {
  element.children({});
  StockPiece piece;
  piece.board = board;
  piece.place = element.place();
  piece.offcut = element.name() == "offcut";
  if (element.required("id", "a name")) piece.id = element.id();
  if (!ids.insert(piece.id).second && !piece.id.empty()) {
    element.unexpected("id", "job-repeated-id", "an id that no other piece has");
  }
  piece.width = element.required_length("width", Least::above_zero);
  piece.height = element.required_length("height", Least::above_zero);
  piece.trim = read_trim(element);
  if (!piece.offcut) {
    piece.supplier = element.line("supplier");
    piece.pack = element.integer("pack", 1, largest_pack, 1);
  }
  piece.stated_price = element.has("price");
  piece.price = read_price(element);
  if (piece.offcut) {
    piece.on_hand = element.integer("on-hand", 0, most_on_hand, 1);
  } else if (element.has("on-hand")) {
    piece.on_hand = element.integer("on-hand", 0, most_on_hand, 0);
  }
  if (piece.usable_width() <= Length() || piece.usable_height() <= Length()) {
    element.problem("job-out-of-range",
                    "the damaged edges of piece " + quoted(piece.id) + " leave nothing of it");
  }
  stock.pieces.push_back(std::move(piece));
}

void read_board(Element& element, std::set<std::string>& ids, Stock& stock) {
  Board board;
  board.name = element.line("name");
  if (!element.has("name")) element.required("name", "the board's name");
  board.colour = Layer{}.colour;
  board.any_colour = !element.has("colour");
  element.colour("colour", board.colour);
  board.thickness = element.measured_or("thickness", thickness_of(Layer{}.ply, stock.unit));
  for (const pugi::xml_node& node : element.children({"sheet", "offcut"})) {
    if (stock.pieces.size() == most_stock_pieces) {
      element.problem("job-too-many", "found more than " + std::to_string(most_stock_pieces) +
                                          " pieces; that is the limit");
      return;
    }
    Element piece(element.reading(), node);
    read_piece(piece, board, ids, stock);
  }
}

void read_root(Reading& reading, pugi::xml_node node, Stock& stock) {
  Element root(reading, node);
  root.integer("version", 1, 1, 1);
  reading.scale.unit = root.word<Unit>(
      "unit", {{"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}}, Unit::inch);
  stock.unit = reading.scale.unit;
  stock.currency = root.line("currency");
  stock.offcut_percent = root.integer("offcut-value", 0, 100, 0);
  std::set<std::string> ids;
  for (const pugi::xml_node& child : root.children({"board"})) {
    Element board(reading, child);
    read_board(board, ids, stock);
  }
}

// A sheet without a price among others with one would count as free.
Problems without_price(const Stock& stock) {
  const auto is_priced = [](const StockPiece& piece) { return !piece.offcut && piece.price > 0; };
  if (std::none_of(stock.pieces.begin(), stock.pieces.end(), is_priced)) return {};
  Problems problems;
  for (const StockPiece& piece : stock.pieces) {
    if (piece.offcut || piece.stated_price) continue;
    problems.push_back({Severity::error, "stock-no-price",
                        "sheet " + quoted(piece.id) +
                            " has no price, but others have one; expected a price (price=\"0\" "
                            "says that it costs nothing)",
                        piece.place, stock.file});
  }
  return problems;
}

}  // namespace

std::optional<std::int64_t> parse_price(std::string_view text) {
  constexpr std::size_t longest = 12;
  if (text.empty() || text.size() > longest) return std::nullopt;
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::size_t places = point == text.size() ? 0 : text.size() - point - 1;
  if (point == 0 || places > 2 || (point < text.size() && places == 0)) return std::nullopt;
  std::int64_t value = 0;
  for (const char c : text) {
    if (c == '.') continue;
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  for (std::size_t i = places; i < 2; ++i) value *= 10;
  return value <= highest_price ? std::optional(value) : std::nullopt;
}

Result<Stock> parse_stock(std::string_view xml, const std::string& file) {
  Reading reading(xml, file, "stock");
  pugi::xml_document document;
  Stock stock;
  stock.file = file;
  if (const pugi::xml_node node = load_document(reading, document)) {
    read_root(reading, node, stock);
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  if (Problems problems = without_price(stock); !problems.empty()) {
    return tl::unexpected(std::move(problems));
  }
  stock.remarks = reading.notes();
  return stock;
}

Result<Stock> read_stock(const std::string& path) {
  const auto bytes = read_input(path, largest_job_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_stock(*bytes, path);
}

std::string format_price(std::int64_t hundredths, const std::string& currency) {
  const std::string cents = std::to_string(hundredths % 100);
  return std::to_string(hundredths / 100) + "." + (cents.size() < 2 ? "0" : "") + cents +
         (currency.empty() ? "" : " " + currency);
}

}  // namespace mullion
