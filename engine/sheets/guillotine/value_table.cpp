#include "engine/sheets/guillotine/value_table.h"

#include <algorithm>
#include <utility>

namespace mullion {
namespace {

// A strip that is best cut some other way than into more strips of its kind.
struct Strip {
  double loss;  // what it falls short of the knapsack bound
  std::int64_t size, value;
};

using Strips = std::vector<Strip>;  // by rising loss

void insert(Strips& strips, const Strip& strip) {
  const auto after =
      std::upper_bound(strips.begin(), strips.end(), strip.loss,
                       [](double loss, const Strip& other) { return loss < other.loss; });
  strips.insert(after, strip);
}

// The best value per unit of the other side, of pieces stacked up to each raster point.
std::vector<double> knapsack(const CutPoints& points, const std::vector<UnitPiece>& pieces,
                             std::int64_t UnitPiece::*size, std::int64_t UnitPiece::*other) {
  const PointIndex& normal = points.normal;
  std::vector<double> best(normal.size(), 0.0);
  for (std::size_t i = 1; i < normal.size(); ++i) {
    best[i] = best[i - 1];
    for (const UnitPiece& piece : pieces) {
      if (piece.*size > normal[i]) continue;
      const double density = static_cast<double>(piece.value) / static_cast<double>(piece.*other);
      best[i] = std::max(best[i], density + best[normal.at_or_below(normal[i] - piece.*size)]);
    }
  }
  std::vector<double> at_raster;
  for (std::size_t i = 0; i < points.raster.size(); ++i) {
    at_raster.push_back(best[normal.at_or_below(points.raster[i])]);
  }
  return at_raster;
}

// Values are whole, so a pattern is better only if it gains one; half of that forgives rounding.
constexpr double least_gain = 0.5;

}  // namespace

ValueTable::ValueTable(const CutPoints& across, const CutPoints& down,
                       std::vector<UnitPiece> pieces, std::int64_t widest, std::int64_t tallest)
    : across_(across.raster),
      down_(down.raster),
      pieces_(std::move(pieces)),
      widest_(widest),
      tallest_(tallest),
      values_(across_.size() * down_.size(), 0) {
  place_pieces();
  fill(knapsack(down, pieces_, &UnitPiece::height, &UnitPiece::width),
       knapsack(across, pieces_, &UnitPiece::width, &UnitPiece::height));
}

void ValueTable::place_pieces() {
  for (const UnitPiece& piece : pieces_) {
    const std::size_t i = across_.at_or_below(piece.width - 1) + 1;
    const std::size_t j = down_.at_or_below(piece.height - 1) + 1;
    std::int64_t& here = values_[i * down_.size() + j];
    here = std::max(here, piece.value);
  }
}

void ValueTable::fill(const std::vector<double>& per_width, const std::vector<double>& per_height) {
  const std::size_t downs = down_.size();
  std::vector<Strips> columns(downs);  // for each height, the strips that a row of them is cut from
  Strips rows;                         // the same for the present width
  for (std::size_t i = 1; i < across_.size(); ++i) {
    rows.clear();
    const std::int64_t x = across_[i];
    const bool level_cuts = x <= widest_;
    std::int64_t* const here = &values_[i * downs];
    for (std::size_t j = 1; j < downs; ++j) {
      const std::int64_t y = down_[j];
      const double column_bound = per_width[j] * static_cast<double>(x);
      const double row_bound = per_height[i] * static_cast<double>(y);
      const bool upright_cuts = y <= tallest_;
      const std::int64_t narrower = upright_cuts ? here[j - downs] : 0;
      const std::int64_t lower = level_cuts ? here[j - 1] : 0;
      std::int64_t best = std::max({here[j], narrower, lower});

      std::int64_t in_columns = narrower;
      for (const Strip& strip : columns[j]) {
        if (!upright_cuts) break;
        if (strip.loss > column_bound - static_cast<double>(best) - least_gain) break;
        if (2 * strip.size > x) continue;
        in_columns =
            std::max(in_columns, strip.value + value(across_.at_or_below(x - strip.size), j));
        best = std::max(best, in_columns);
      }
      std::int64_t in_rows = lower;
      for (const Strip& strip : rows) {
        if (!level_cuts) break;
        if (strip.loss > row_bound - static_cast<double>(best) - least_gain) break;
        if (2 * strip.size > y) continue;
        in_rows = std::max(in_rows, strip.value + here[down_.at_or_below(y - strip.size)]);
        best = std::max(best, in_rows);
      }
      here[j] = best;
      if (best > in_columns && 2 * x <= across_.back()) {
        insert(columns[j], {column_bound - static_cast<double>(best), x, best});
      }
      if (best > in_rows && 2 * y <= down_.back()) {
        insert(rows, {row_bound - static_cast<double>(best), y, best});
      }
    }
  }
}

bool ValueTable::parts_at(Cell cell, Cell& first, Cell& second, Pattern::Kind& kind) const {
  const std::int64_t wanted = value(cell.across, cell.down);
  const std::int64_t x = across_[cell.across];
  const std::int64_t y = down_[cell.down];
  for (std::size_t i = 1; i < cell.across && 2 * across_[i] <= x && y <= tallest_; ++i) {
    const std::size_t rest = across_.at_or_below(x - across_[i]);
    if (value(i, cell.down) + value(rest, cell.down) != wanted) continue;
    first = {i, cell.down};
    second = {rest, cell.down};
    kind = Pattern::Kind::columns;
    return true;
  }
  for (std::size_t j = 1; j < cell.down && 2 * down_[j] <= y && x <= widest_; ++j) {
    const std::size_t rest = down_.at_or_below(y - down_[j]);
    if (value(cell.across, j) + value(cell.across, rest) != wanted) continue;
    first = {cell.across, j};
    second = {cell.across, rest};
    kind = Pattern::Kind::rows;
    return true;
  }
  return false;
}

Pattern ValueTable::pattern_of(Cell cell) const {
  Pattern pattern;
  const std::int64_t wanted = value(cell.across, cell.down);
  if (wanted == 0) return pattern;
  while (down_[cell.down] <= tallest_ && value(cell.across - 1, cell.down) == wanted) {
    --cell.across;
  }
  while (across_[cell.across] <= widest_ && value(cell.across, cell.down - 1) == wanted) {
    --cell.down;
  }
  for (const UnitPiece& piece : pieces_) {
    if (piece.value != wanted || piece.width > across_[cell.across] ||
        piece.height > down_[cell.down]) {
      continue;
    }
    pattern.kind = Pattern::Kind::blank;
    pattern.blank = piece.blank;
    pattern.turned = piece.turned;
    return pattern;
  }
  Cell first{}, second{};
  if (!parts_at(cell, first, second, pattern.kind)) return pattern;
  pattern.parts.push_back(pattern_of(first));
  pattern.parts.push_back(pattern_of(second));
  return pattern;
}

Pattern ValueTable::pattern() const {
  return pattern_of({across_.size() - 1, down_.size() - 1});
}

}  // namespace mullion
