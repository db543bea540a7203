#include <algorithm>

#include "render/proof/blocks.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double column_gap = 8, swatch = 15, chip_gap = 8, detail_row = 9, material_gap = 6;
constexpr double most_amounts = 0.72;  // of a table's width

struct Columns {
  double label = 0, own = 0, other = 0;
};

Columns widths_of(const std::vector<SizeFact>& facts) {
  Columns widths;
  for (const SizeFact& fact : facts) {
    widths.label = std::max(widths.label, paper::text_width(fact.label, type::faint()));
    widths.own = std::max(widths.own, paper::text_width(fact.own, type::body()));
    widths.other = std::max(widths.other, paper::text_width(fact.other, type::faint()));
  }
  return widths;
}

struct AmountColumns {
  double left = 0, first = 0, step = 0;  // `first`: how much is left for the text
  double right_of(std::size_t column) const {
    return left + first + step * static_cast<double>(column + 1);
  }
};

AmountColumns columns_for(const std::vector<PriceRow>& rows, std::size_t count, double left,
                          double width) {
  double widest = 0;
  for (const PriceRow& row : rows) {
    for (const std::string& amount : row.amounts) {
      widest = std::max(widest, paper::text_width(amount, type::strong(9)));
    }
  }
  const auto all = static_cast<double>(count);
  const double step = std::min(widest + column_gap, width * most_amounts / all);
  return {left, width - step * all, step};
}

// What a price is for, and its detail beside it or below. Returns how far the last line lies below
// the first.
double draw_reason(paper::Drawing& page, const PriceRow& row, const paper::TextStyle& style,
                   paper::Spot spot, double room) {
  const auto lines = paper::draw_lines(page, row.text, spot, room, style, type::row - 2);
  double down = (type::row - 2) * static_cast<double>(lines - 1);
  if (row.detail.empty()) return down;
  const std::string last = paper::lines_of(row.text, room, style).back();
  double indent = paper::text_width(last, style) + 6;
  if (indent + paper::text_width(row.detail, type::faint(7)) > room) {
    indent = 0;
    down += detail_row;
  }
  const auto more = paper::draw_lines(page, row.detail, {spot.x + indent, spot.y + down},
                                      room - indent, type::faint(7), detail_row);
  return down + detail_row * static_cast<double>(more - 1);
}

}  // namespace

// One line a fact where the width allows it; else the second unit stands below the first.
double draw_sizes(paper::Drawing& page, const std::vector<SizeFact>& facts, paper::Spot corner,
                  double width) {
  const Columns widths = widths_of(facts);
  const bool one_line = widths.label + widths.own + widths.other + 2 * column_gap <= width;
  const double right = corner.x + width;
  const double own = one_line ? right - widths.other - column_gap : right;
  const double room = own - widths.own - column_gap - corner.x;
  double y = corner.y + type::row - 3;
  for (const SizeFact& fact : facts) {
    const auto lines =
        paper::draw_lines(page, fact.label, {corner.x, y}, room, type::faint(), type::row - 2);
    page.text(fact.own, {own, y}, type::right(type::body()));
    page.text(fact.other, {right, one_line ? y : y + type::row - 2}, type::right(type::faint()));
    y += type::row +
         (type::row - 2) * static_cast<double>(std::max<std::size_t>(lines, one_line ? 1 : 2) - 1);
  }
  return y - corner.y - type::row + 3;
}

double draw_materials(paper::Drawing& page, const std::vector<Material>& materials,
                      paper::Spot corner, double width) {
  double y = corner.y;
  for (const Material& material : materials) {
    const paper::Box chip{corner.x, y + 1, swatch, swatch};
    page.fill(paper::rectangle(chip), {material.colour});
    page.stroke(paper::rectangle(chip), {0.4, type::quiet, {}, 0.7});
    const double x = corner.x + swatch + chip_gap, room = width - swatch - chip_gap;
    double line = y + 8;
    line += detail_row * static_cast<double>(paper::draw_lines(page, material.name, {x, line}, room,
                                                               type::body(), detail_row));
    line += detail_row * static_cast<double>(paper::draw_lines(page, material.detail, {x, line},
                                                               room, type::faint(7), detail_row));
    y = std::max(y + swatch, line - 8) + material_gap;
  }
  return y - corner.y;
}

double draw_prices(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width) {
  const auto rows = price_rows(sheet);
  if (rows.empty()) return 0;
  const std::size_t count = sheet.choices.size();
  const AmountColumns columns = columns_for(rows, count, corner.x, width);
  double y = corner.y + type::row - 3;
  for (std::size_t i = 0; count > 1 && i < count; ++i) {
    page.text(letter_of(i), {columns.right_of(i), y}, type::right(type::strong(9)));
  }
  if (count > 1) y += type::row;
  for (const PriceRow& row : rows) {
    const paper::TextStyle style = row.is_total ? type::strong(9) : type::body();
    for (std::size_t i = 0; i < count; ++i) {
      page.text(row.amounts[i], {columns.right_of(i), y}, type::right(style));
    }
    y += draw_reason(page, row, style, {corner.x, y}, columns.first) + type::row - 0.5;
  }
  return y - corner.y - type::row + 3;
}

}  // namespace mullion::proof
