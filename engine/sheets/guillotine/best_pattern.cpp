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

// One side of the sheet and the longest cut along it.
struct Side {
  std::int64_t length, longest_cut;
};

// The same side of all pieces and of the sheet in fewer steps.
void coarsen(Side& side, std::vector<UnitPiece>& pieces, Size size, bool up) {
  for (UnitPiece& piece : pieces) {
    const std::int64_t steps = piece.*size * coarse_steps;
    const std::int64_t rounding = up ? side.length - 1 : 0;
    piece.*size = std::max<std::int64_t>((steps + rounding) / side.length, 1);
  }
  side = {coarse_steps, side.longest_cut * coarse_steps / side.length};
}

void divide_by_common_step(Side& side, std::vector<UnitPiece>& pieces, Size size) {
  std::int64_t step = 0;
  for (const UnitPiece& piece : pieces) step = std::gcd(step, piece.*size);
  if (step == 0) return;
  for (UnitPiece& piece : pieces) piece.*size /= step;
  side = {side.length / step, side.longest_cut / step};
}

// A part that is raised to a raster point may become too wide to be cut, so a limit on the cuts
// leaves only normal points.
std::optional<CutPoints> points_for(const Side& side, const std::vector<UnitPiece>& pieces,
                                    Size size) {
  std::vector<std::int64_t> sizes;
  sizes.reserve(pieces.size());
  for (const UnitPiece& piece : pieces) sizes.push_back(piece.*size);
  std::sort(sizes.begin(), sizes.end());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  const auto normal = normal_points(side.length, sizes, most_normal_points);
  if (!normal) return std::nullopt;
  const bool limited = side.longest_cut < side.length;
  return CutPoints{PointIndex(*normal),
                   PointIndex(limited ? *normal : raster_points(side.length, *normal))};
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

PatternSearch::PatternSearch(Length width, Length height, CutLimits limits,
                             std::vector<BlankSize> blanks, std::size_t most_cells)
    : PatternSearch(width, height, limits, std::move(blanks), most_cells, {}) {}

PatternSearch::PatternSearch(Length width, Length height, CutLimits limits,
                             std::vector<BlankSize> blanks, std::size_t most_cells,
                             const std::vector<std::int64_t>& values)
    : width_(width),
      height_(height),
      limits_(limits),
      most_cells_(most_cells),
      blanks_(std::move(blanks)) {
  bool sound = width > Length() && height > Length() && limits.kerf >= Length();
  for (const BlankSize& blank : blanks_) {
    sound = sound && blank.width > Length() && blank.height > Length();
  }
  if (!sound) throw std::invalid_argument("sheets and blanks have positive sizes");
  if (make_grid(grid_, Rounding::none, values)) return;
  most_cells_ = coarse_steps * coarse_steps * 2;
  make_grid(grid_, Rounding::up, values);
  relaxed_ = Grid{};
  make_grid(*relaxed_, Rounding::down, values);
}

bool PatternSearch::can_be_had(Length width, Length height) const {
  if (width > width_ || height > height_) return false;
  if (width == width_ && height == height_) return true;
  if (!limits_.allow(height_, width_) && !limits_.allow(width_, height_)) return false;
  return (width == width_ || limits_.allow(height, width_)) &&
         (height == height_ || limits_.allow(width, height_));
}

bool PatternSearch::make_grid(Grid& grid, Rounding rounding,
                              const std::vector<std::int64_t>& values) const {
  grid.pieces.clear();
  const auto add = [&](Length across, Length down, std::size_t blank, bool turned) {
    if (!can_be_had(across, down)) return;
    grid.pieces.push_back({(across + limits_.kerf).ticks(), (down + limits_.kerf).ticks(), 0,
                           static_cast<int>(blank), turned});
  };
  for (std::size_t i = 0; i < blanks_.size(); ++i) {
    if (!values.empty() && values[i] <= 0) continue;
    const BlankSize& blank = blanks_[i];
    add(blank.width, blank.height, i, false);
    if (blank.may_turn && blank.width != blank.height) add(blank.height, blank.width, i, true);
  }
  // Cuts along one side make the other one smaller: where it is too wide, there are none.
  const auto side = [this](Length length, Length across) {
    const bool too_wide = limits_.widest_board && across > *limits_.widest_board;
    const Length longest =
        too_wide ? Length() - limits_.kerf : std::min(limits_.longest_cut.value_or(length), length);
    return Side{(length + limits_.kerf).ticks(), (longest + limits_.kerf).ticks()};
  };
  Side width = side(width_, height_), height = side(height_, width_);
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
  grid.widest = width.longest_cut;
  grid.tallest = height.longest_cut;
  return true;
}

ValueTable PatternSearch::table(const Grid& grid, const std::vector<std::int64_t>& values) const {
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
  return ValueTable(grid.across, grid.down, std::move(pieces), grid.widest, grid.tallest);
}

PatternSearch PatternSearch::within(Length width, Length height,
                                    const std::vector<std::int64_t>& values) const {
  return {width, height, limits_, blanks_, most_cells_, values};
}

Pattern PatternSearch::pushed_together(const Pattern& pattern) const {
  return mullion::pushed_together(pattern, width_, height_, limits_);
}

std::int64_t PatternSearch::effort() const {
  constexpr std::size_t overhead = 3000;
  const Grid& largest = relaxed_ ? *relaxed_ : grid_;
  return static_cast<std::int64_t>(overhead +
                                   largest.across.raster.size() * largest.down.raster.size());
}

BestPattern PatternSearch::find(const std::vector<std::int64_t>& values) const {
  const ValueTable found = table(grid_, values);
  BestPattern best;
  best.value = best.bound = found.best();
  best.pattern = found.pattern();
  give_sizes(best.pattern, blanks_);
  best.pattern = pushed_together(best.pattern);
  if (relaxed_) {
    best.bound = table(*relaxed_, values).best();
  }
  return best;
}

}  // namespace mullion
