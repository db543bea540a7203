#include <algorithm>
#include <map>

#include "engine/file/input.h"
#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/shop/book.h"
#include "engine/xml/root.h"

namespace mullion::price {
namespace {

const std::vector<Word<Unit>> unit_words = {
    {"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}};

const Word<Basis> sheet{"sheet", Basis::sheet}, united_inch{"united-inch", Basis::united_inch},
    square_foot{"square-foot", Basis::square_foot},
    square_metre{"square-metre", Basis::square_metre}, foot{"foot", Basis::foot},
    metre{"metre", Basis::metre};

class BookReader {
 public:
  explicit BookReader(Book& book) : book_(book) {}

  void read(Element& root);

 private:
  void read_head(Element& root);
  void read_entry(Element& entry);
  void read_board(Element& entry);
  void read_moulding(Element& entry);
  void read_shape(Element& entry);
  void read_discount(Element& entry);
  void read_tax(Element& entry);
  Rate read_rate(Element& entry, Basis basis);
  Rate read_rate(Element& entry, const std::vector<Word<Basis>>& bases);
  Amount amount(Element& entry, std::string_view attribute, int decimals);
  std::optional<Money> money(Element& entry, std::string_view attribute);
  void once(Element& entry, std::optional<Rate>& rate, Basis basis);
  void only_one(Element& entry, bool is_there);
  template <class Entry>
  void unlike(Element& entry, const std::vector<Entry>& others, const std::string& name);

  Book& book_;
};

// Zero where it is not stated.
Amount BookReader::amount(Element& entry, std::string_view attribute, int decimals) {
  const auto text = entry.value(attribute);
  if (!text) return 0;
  const auto found = parse_amount(*text, decimals);
  if (found) return *found;
  entry.unexpected(attribute, "job-bad-amount",
                   "a decimal such as 12.50, of at most " + std::to_string(decimals) +
                       " decimals and below 1000000000");
  return 0;
}

std::optional<Money> BookReader::money(Element& entry, std::string_view attribute) {
  if (!entry.has(attribute)) return std::nullopt;
  const Money found =
      rounded(amount(entry, attribute, book_.currency.decimals), book_.currency, book_.rounding);
  if (found.units > 0) return found;
  entry.unexpected(attribute, "job-out-of-range", "an amount above zero");
  return std::nullopt;
}

Rate BookReader::read_rate(Element& entry, Basis basis) {
  Rate rate;
  rate.basis = basis;
  entry.required("price", "what the customer pays");
  rate.price = amount(entry, "price", rate_decimals);
  if (entry.has("cost")) rate.cost = amount(entry, "cost", rate_decimals);
  rate.least = amount(entry, "least", rate_decimals);
  return rate;
}

Rate BookReader::read_rate(Element& entry, const std::vector<Word<Basis>>& bases) {
  entry.required("by", "what the price is for");
  return read_rate(entry, entry.word<Basis>("by", bases, bases.back().value));
}

void BookReader::read_board(Element& entry) {
  BoardPrice board;
  board.name = entry.line("name");
  unlike(entry, book_.boards, board.name);
  board.rate = read_rate(entry, {sheet, united_inch, square_foot, square_metre});
  const auto width = entry.length("sheet-width", Least::above_zero);
  const auto height = entry.length("sheet-height", Least::above_zero);
  if (board.rate.basis == Basis::sheet &&
      !(entry.has("sheet-width") && entry.has("sheet-height"))) {
    entry.problem("job-missing-attribute",
                  "found a price by the sheet; expected sheet-width and sheet-height beside it");
  }
  board.sheet_width = width.value_or(Length());
  board.sheet_height = height.value_or(Length());
  book_.boards.push_back(board);
}

void BookReader::read_moulding(Element& entry) {
  MouldingPrice moulding;
  moulding.name = entry.line("name");
  unlike(entry, book_.mouldings, moulding.name);
  moulding.rate = read_rate(entry, {foot, metre});
  moulding.waste_percent = amount(entry, "waste-percent", 3);
  moulding.sold_in = entry.length_or("sold-in", Least::above_zero, Length());
  book_.mouldings.push_back(moulding);
}

void BookReader::read_shape(Element& entry) {
  entry.required("shape", "the shape that costs more");
  const ShapeKind kind = entry.word<ShapeKind>("shape", shape_words(), ShapeKind::ellipse);
  const Rate rate = read_rate(entry, Basis::each);
  if (book_.shapes.emplace(kind, rate).second) return;
  entry.problem("job-repeated-element", "found this shape twice; expected it once");
}

void BookReader::read_discount(Element& entry) {
  entry.required("percent", "the discount");
  book_.discounts.push_back(
      {entry.integer("from-quantity", 1, most_copies, 1), amount(entry, "percent", 3)});
  if (book_.discounts.back().percent > 100) {
    entry.unexpected("percent", "job-out-of-range", "at most 100");
  }
}

void BookReader::read_tax(Element& entry) {
  only_one(entry, book_.tax.has_value());
  entry.required("percent", "the rate of the tax");
  book_.tax = Tax{entry.line("name", "Tax"), amount(entry, "percent", 4), entry.yes("included")};
}

void BookReader::only_one(Element& entry, bool is_there) {
  if (!is_there) return;
  entry.problem("job-repeated-element",
                "found <" + std::string(entry.name()) + "> twice in <prices>; expected it once");
}

// The second of two entries of one name would never be looked at.
template <class Entry>
void BookReader::unlike(Element& entry, const std::vector<Entry>& others, const std::string& name) {
  const bool is_there =
      std::any_of(others.begin(), others.end(), [&](const Entry& e) { return e.name == name; });
  if (!is_there) return;
  entry.problem("job-repeated-element", "found <" + std::string(entry.name()) + "> twice " +
                                            (name.empty() ? "without a name" : "with one name") +
                                            "; expected it once");
}

void BookReader::once(Element& entry, std::optional<Rate>& rate, Basis basis) {
  only_one(entry, rate.has_value());
  rate = read_rate(entry, basis);
}

void BookReader::read_entry(Element& entry) {
  entry.children({});
  const std::string_view name = entry.name();
  if (name == "board") read_board(entry);
  if (name == "moulding") read_moulding(entry);
  if (name == "glazing") {
    entry.required("name", "what the glazing is called");
    const std::string glazing = entry.line("name");
    unlike(entry, book_.glazings, glazing);
    book_.glazings.push_back({glazing, read_rate(entry, {united_inch, square_foot, square_metre})});
  }
  if (name == "opening") once(entry, book_.opening, Basis::each);
  if (name == "extra-layer") once(entry, book_.extra_layer, Basis::each);
  if (name == "groove") once(entry, book_.groove, Basis::each);
  if (name == "labour") once(entry, book_.labour, Basis::minute);
  if (name == "shaped-opening") read_shape(entry);
  if (name == "least-charge") {
    only_one(entry, book_.least_charge.has_value());
    entry.required("price", "the smallest price of a piece");
    book_.least_charge = money(entry, "price");
  }
  if (name == "discount") read_discount(entry);
  if (name == "tax") read_tax(entry);
}

void BookReader::read_head(Element& root) {
  root.required("version", "version=\"1\"");
  root.integer("version", 1, 1, 1);
  root.reading().scale.unit = root.word<Unit>("unit", unit_words, Unit::inch);
  const auto code = root.required("currency", "a code of three letters such as EUR");
  book_.currency.code = code.value_or("EUR");
  if (code && (code->size() != 3 || !std::all_of(code->begin(), code->end(),
                                                 [](char c) { return c >= 'A' && c <= 'Z'; }))) {
    root.unexpected("currency", "job-bad-currency", "a code of three capital letters such as EUR");
  }
  book_.currency.decimals = root.integer("decimals", 0, 4, 2);
  book_.currency.symbol = root.line("symbol");
  book_.currency.symbol_after = root.yes("symbol-after");
  book_.rounding = root.word<Rounding>(
      "rounding", {{"half-up", Rounding::half_up}, {"half-even", Rounding::half_even}},
      Rounding::half_up);
  book_.round_to = money(root, "round-to");
}

void BookReader::read(Element& root) {
  read_head(root);
  for (const pugi::xml_node& node :
       root.children({"board", "moulding", "glazing", "opening", "extra-layer", "groove", "labour",
                      "shaped-opening", "least-charge", "discount", "tax"})) {
    Element entry(root.reading(), node);
    read_entry(entry);
  }
}

}  // namespace

Result<Book> parse_book(std::string_view xml, const std::string& file) {
  Book book;
  book.file = file;
  return parse_root(xml, file, "prices", std::move(book),
                    [](Element& root, Book& into) { BookReader(into).read(root); });
}

Result<Book> read_book(const std::string& path) {
  const auto bytes = read_input(path, largest_job_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_book(*bytes, path);
}

}  // namespace mullion::price
