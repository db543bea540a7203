#pragma once

// A shop's price book: its own XML vocabulary, described word by word in prices.xsd beside this
// header. It holds the shop's own figures and nothing else does: without a book there is no price.
//
// Rates are exact decimals of up to six places in the book's currency. Refused, as in a job file:
// unknown words, text that is not UTF-8, document types.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/job/job.h"
#include "engine/shop/money.h"

namespace mullion::price {

// What one rate is multiplied by. A united inch is one inch of width plus height (trade usage).
enum class Basis { sheet, united_inch, square_foot, square_metre, foot, metre, each, minute };

struct Rate {
  Basis basis = Basis::each;
  Amount price;                // what the customer pays
  std::optional<Amount> cost;  // what the shop pays; nothing: not known
  Amount least;                // smallest charge for one line
};

struct BoardPrice {
  std::string name;  // empty: any board without an entry of its own
  Rate rate;
  Length sheet_width, sheet_height;  // where the basis is a sheet
};

struct MouldingPrice {
  std::string name;  // empty: any other
  Rate rate;
  Amount waste_percent;
  Length sold_in;  // lengths are rounded up to whole multiples; zero: not rounded
};

struct GlazingPrice {
  std::string name;
  Rate rate;
};

struct Discount {
  int from_quantity = 1;
  Amount percent;
};

struct Tax {
  std::string name = "Tax";
  Amount percent;
  bool included = false;  // the prices of the book hold it already
};

struct Book {
  Currency currency;
  Rounding rounding = Rounding::half_up;
  std::optional<Money> round_to;  // the price of one piece goes to a multiple of this
  std::vector<BoardPrice> boards;
  std::vector<MouldingPrice> mouldings;
  std::vector<GlazingPrice> glazings;  // the first is the usual one
  std::optional<Rate> opening, extra_layer, groove, labour;
  std::map<ShapeKind, Rate> shapes;   // on top of the opening
  std::optional<Money> least_charge;  // for one piece
  std::vector<Discount> discounts;
  std::optional<Tax> tax;
  std::string file;
};

Result<Book> read_book(const std::string& path);
Result<Book> parse_book(std::string_view xml, const std::string& file);

}  // namespace mullion::price
