#pragma once

// What a job costs by a shop's price book, line by line.
//
// Every line says how its amount came about. An amount is exact until it becomes a line, where it
// is rounded once by the book's rule; sums add rounded lines, so that a customer who adds them up
// comes to the same total.

#include <optional>
#include <string>
#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/locale/locale.h"
#include "engine/shop/book.h"

namespace mullion::price {

struct Line {
  enum class Kind { item, adjustment, sum, total };
  Kind kind = Kind::item;
  std::string what;           // for the customer: "Mat board Oat"
  std::string detail;         // for the customer: "16 × 14 in"; may be empty
  std::string how;            // for the shop: "16 + 14 = 30 united inches at 0.40"
  Money price;                // what it adds; of a sum or total, what was reached
  std::optional<Money> cost;  // to the shop; items only
};

struct Choices {
  std::string glazing;         // name in the book; empty: the first of the book
  bool glazed = true;          // a frame without glazing: false
  std::optional<int> minutes;  // of labour for one piece; nothing: labour is not charged
  Locale locale{};             // of the words
};

struct Estimate {
  Currency currency;
  std::vector<Line> lines;
  Money total;             // for all pieces, tax included
  Money cost;              // for all pieces, of the lines whose cost is known
  bool cost_known = true;  // of every item
};

// Errors: a board, moulding or glazing without a price, at the job's place, with a near name; a
// blank that no sheet of the book's size holds.
Result<Estimate> estimate(const Job& job, const Cuts& cuts, const Book& book,
                          const Choices& choices = {});

// Two outputs, as text: what the customer sees, and what the shop keeps to itself.
std::string customer_text(const Estimate& estimate, const Locale& locale = {});
std::string cost_sheet_text(const Estimate& estimate, const Locale& locale = {});

}  // namespace mullion::price
