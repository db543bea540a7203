#include <algorithm>

#include "engine/shop/estimate.h"
#include "engine/xml/source_text.h"

namespace mullion::price {
namespace {

using Row = std::vector<std::string>;

std::string padded(const std::string& text, std::size_t width, bool right) {
  const std::string blanks(width - std::min(width, count_characters(text)), ' ');
  return right ? blanks + text : text + blanks;
}

// Columns two blanks apart; those from `first_number` on are set to the right.
std::string table(const std::vector<Row>& rows, std::size_t first_number) {
  std::vector<std::size_t> widths(rows.front().size());
  for (const Row& row : rows) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      widths[c] = std::max(widths[c], count_characters(row[c]));
    }
  }
  std::string out;
  for (const Row& row : rows) {
    std::string line;
    for (std::size_t c = 0; c < row.size(); ++c) {
      line += (c > 0 ? "  " : "") + padded(row[c], widths[c], c >= first_number);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + "\n";
  }
  return out;
}

}  // namespace

std::string customer_text(const Estimate& estimate, const Locale& locale) {
  std::vector<Row> rows;
  for (const Line& line : estimate.lines) {
    rows.push_back({line.what, line.detail, format(line.price, estimate.currency, locale)});
  }
  return table(rows, 2);
}

std::string cost_sheet_text(const Estimate& estimate, const Locale& locale) {
  std::vector<Row> rows{
      {locale.say("Line"), locale.say("How"), locale.say("Price"), locale.say("Cost")}};
  for (const Line& line : estimate.lines) {
    const std::string cost = line.cost ? format(*line.cost, estimate.currency, locale)
                             : line.kind == Line::Kind::item ? locale.say("not known")
                                                             : "";
    rows.push_back({line.what, line.how, format(line.price, estimate.currency, locale), cost});
  }
  rows.push_back({locale.say("Cost"),
                  locale.say(estimate.cost_known ? mark("of all pieces")
                                                 : mark("of the lines that are known")),
                  "", format(estimate.cost, estimate.currency, locale)});
  return table(rows, 2);
}

}  // namespace mullion::price
