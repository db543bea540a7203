#include "render/template/needed_sheets.h"

#include <algorithm>
#include <deque>
#include <optional>
#include <utility>

namespace mullion {
namespace {

using SheetPlace = std::pair<std::size_t, std::size_t>;  // row, column

// Does the line run through the box, or touch it?
bool meets(const paper::Edge& line, const paper::Box& box) {
  double from = 0, to = 1;
  const auto cut = [&](double start, double step, double low, double high) {
    if (step == 0) return start >= low && start <= high;
    const double a = (low - start) / step, b = (high - start) / step;
    from = std::max(from, std::min(a, b));
    to = std::min(to, std::max(a, b));
    return from <= to;
  };
  return cut(line.from.x, line.to.x - line.from.x, box.x, box.x + box.width) &&
         cut(line.from.y, line.to.y - line.from.y, box.y, box.y + box.height);
}

paper::Box tile_of(const paper::Tiling& tiling, std::size_t row, std::size_t column) {
  const Length left = tiling.columns[column], top = tiling.rows[row];
  return {paper::points(left), paper::points(top), paper::points(tiling.columns[column + 1] - left),
          paper::points(tiling.rows[row + 1] - top)};
}

std::vector<SheetPlace> neighbours(const SheetPlace& place, std::size_t rows, std::size_t columns) {
  const auto [row, column] = place;
  std::vector<SheetPlace> out;
  if (row > 0) out.push_back({row - 1, column});
  if (column > 0) out.push_back({row, column - 1});
  if (column + 1 < columns) out.push_back({row, column + 1});
  if (row + 1 < rows) out.push_back({row + 1, column});
  return out;
}

}  // namespace

NeededSheets::NeededSheets(const paper::Tiling& tiling, const std::vector<paper::Edge>& lines)
    : needed_(tiling.rows.size() - 1, std::vector<bool>(tiling.columns.size() - 1, false)) {
  for (std::size_t row = 0; row < needed_.size(); ++row) {
    for (std::size_t column = 0; column < needed_[row].size(); ++column) {
      const paper::Box tile = tile_of(tiling, row, column);
      needed_[row][column] = std::any_of(
          lines.begin(), lines.end(), [&](const paper::Edge& line) { return meets(line, tile); });
    }
  }
  while (join_parts()) {
  }
}

// Joins the part of the first needed sheet to the next nearest one; false where there is no other.
bool NeededSheets::join_parts() {
  const std::size_t rows = needed_.size(), columns = needed_.front().size();
  std::optional<SheetPlace> first;
  for (std::size_t i = 0; i < rows * columns && !first; ++i) {
    if (needed_[i / columns][i % columns]) first = SheetPlace{i / columns, i % columns};
  }
  if (!first) return false;
  // The sheets of the first part come at no cost, the others at one each.
  std::vector<std::vector<std::optional<SheetPlace>>> from(
      rows, std::vector<std::optional<SheetPlace>>(columns));
  std::deque<std::pair<SheetPlace, bool>> open{{*first, true}};  // and whether it is of that part
  from[first->first][first->second] = *first;
  while (!open.empty()) {
    const auto [here, own] = open.front();
    open.pop_front();
    for (const SheetPlace& next : neighbours(here, rows, columns)) {
      auto& before = from[next.first][next.second];
      if (before) continue;
      before = here;
      const bool is_needed = needed_[next.first][next.second];
      if (own && is_needed) {
        open.push_front({next, true});
      } else if (is_needed) {
        for (SheetPlace at = here; !needed_[at.first][at.second]; at = *from[at.first][at.second]) {
          needed_[at.first][at.second] = true;
        }
        return true;
      } else {
        open.push_back({next, false});
      }
    }
  }
  return false;
}

std::size_t NeededSheets::count() const {
  std::size_t count = 0;
  for (const auto& row : needed_) {
    count += static_cast<std::size_t>(std::count(row.begin(), row.end(), true));
  }
  return count;
}

std::size_t NeededSheets::left_out() const {
  return needed_.size() * needed_.front().size() - count();
}

}  // namespace mullion
