#include "engine/sheets/guillotine/best_pattern.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <utility>

namespace mullion {
namespace {

constexpr std::size_t most_normal_points = 20'000;
// Steps of a coarse grid: a side parted into up to eight equal parts stays exact.
constexpr std::int64_t coarse_steps = 840;
constexpr double value_limit = static_cast<double>(std::int64_t{1} << 50);

using Size = std::int64_t UnitPiece::*;

// The same side of all pieces and of the sheet in fewer steps.
void coarsen(std::int64_t& side, std::vector<UnitPiece>& pieces, Size size, bool up) {
  for (UnitPiece& piece : pieces) {
    const std::int64_t steps = piece.*size * coarse_steps;
    piece.*size = std::max<std::int64_t>(up ? (steps + side - 1) / side : steps / side, 1);
  }
  side = coarse_steps;
}

void divide_by_common_step(std::int64_t& side, std::vector<UnitPiece>& pieces, Size size) {
  std::int64_t step = 0;
  for (const UnitPiece& piece : pieces) step = std::gcd(step, piece.*size);
  if (step == 0) return;
  for (UnitPiece& piece : pieces) piece.*size /= step;
  side /= step;
}

std::optional<CutPoints> points_for(std::int64_t side, const std::vector<UnitPiece>& pieces,
                                    Size size) {
  std::vector<std::int64_t> sizes;
  for (const UnitPiece& piece : pieces) sizes.push_back(piece.*size);
  std::sort(sizes.begin(), sizes.end());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  const auto normal = normal_points(side, sizes, most_normal_points);
  if (!normal) return std::nullopt;
  return CutPoints{PointIndex(*normal), PointIndex(raster_points(side, *normal))};
}

void give_sizes(Pattern& pattern, const std::vector<BlankSize>& blanks) {
  if (pattern.kind == Pattern::Kind::blank) {
    const BlankSize& size = blanks[static_cast<std::size_t>(pattern.blank)];
    pattern.width = pattern.turned ? size.height : size.width;
    pattern.height = pattern.turned ? size.width : size.height;
  }
  for (Pattern& part : pattern.parts) give_sizes(part, blanks);
}

}  // namespace

PatternSearch::PatternSearch(Length width, Length height, Length kerf,
                             std::vector<BlankSize> blanks, std::size_t most_cells)
    : width_(width),
      height_(height),
      kerf_(kerf),
      most_cells_(most_cells),
      blanks_(std::move(blanks)) {
  bool sound = width > Length() && height > Length() && kerf >= Length();
  for (const BlankSize& blank : blanks_) {
    sound = sound && blank.width > Length() && blank.height > Length();
  }
  if (!sound) throw std::invalid_argument("sheets and blanks have positive sizes");
  if (make_grid(grid_, Rounding::none)) return;
  most_cells_ = coarse_steps * coarse_steps * 2;
  make_grid(grid_, Rounding::up);
  relaxed_.emplace();
  make_grid(*relaxed_, Rounding::down);
}

bool PatternSearch::make_grid(Grid& grid, Rounding rounding) const {
  std::int64_t width = (width_ + kerf_).ticks();
  std::int64_t height = (height_ + kerf_).ticks();
  grid.pieces.clear();
  const auto add = [&](std::int64_t across, std::int64_t down, std::size_t blank, bool turned) {
    if (across > width || down > height) return;
    grid.pieces.push_back({across, down, 0, static_cast<int>(blank), turned});
  };
  for (std::size_t i = 0; i < blanks_.size(); ++i) {
    const std::int64_t across = (blanks_[i].width + kerf_).ticks();
    const std::int64_t down = (blanks_[i].height + kerf_).ticks();
    add(across, down, i, false);
    if (blanks_[i].may_turn && across != down) add(down, across, i, true);
  }
  if (rounding != Rounding::none) {
    coarsen(width, grid.pieces, &UnitPiece::width, rounding == Rounding::up);
    coarsen(height, grid.pieces, &UnitPiece::height, rounding == Rounding::up);
  }
  divide_by_common_step(width, grid.pieces, &UnitPiece::width);
  divide_by_common_step(height, grid.pieces, &UnitPiece::height);
  auto across = points_for(width, grid.pieces, &UnitPiece::width);
  auto down = points_for(height, grid.pieces, &UnitPiece::height);
  if (!across || !down || across->raster.size() * down->raster.size() > most_cells_) return false;
  grid.across = std::move(*across);
  grid.down = std::move(*down);
  return true;
}

std::vector<UnitPiece> PatternSearch::valued(const Grid& grid,
                                             const std::vector<std::int64_t>& values) const {
  const double sheet =
      static_cast<double>(grid.across.raster.back()) * static_cast<double>(grid.down.raster.back());
  std::vector<UnitPiece> pieces;
  for (UnitPiece piece : grid.pieces) {
    piece.value = values.at(static_cast<std::size_t>(piece.blank));
    const double area = static_cast<double>(piece.width) * static_cast<double>(piece.height);
    if (static_cast<double>(piece.value) / area * sheet >= value_limit) {
      throw std::invalid_argument("a full sheet is worth too much to be counted");
    }
    if (piece.value > 0) pieces.push_back(piece);
  }
  return pieces;
}

BestPattern PatternSearch::find(const std::vector<std::int64_t>& values) const {
  const ValueTable table(grid_.across, grid_.down, valued(grid_, values));
  BestPattern best;
  best.value = best.bound = table.best();
  best.pattern = table.pattern();
  give_sizes(best.pattern, blanks_);
  best.pattern = pushed_together(best.pattern, width_, height_, kerf_);
  if (relaxed_) {
    best.bound = ValueTable(relaxed_->across, relaxed_->down, valued(*relaxed_, values)).best();
  }
  return best;
}

}  // namespace mullion
