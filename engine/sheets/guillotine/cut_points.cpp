#include "engine/sheets/guillotine/cut_points.h"

#include <algorithm>
#include <utility>

namespace mullion {

std::optional<std::vector<std::int64_t>> normal_points(std::int64_t side,
                                                       const std::vector<std::int64_t>& sizes,
                                                       std::size_t limit) {
  std::vector<std::int64_t> points{0};
  std::vector<std::size_t> next(sizes.size(), 0);  // the point that each size is added to next
  for (;;) {
    std::int64_t least = side + 1;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      least = std::min(least, points[next[i]] + sizes[i]);
    }
    if (least > side) return points;
    if (points.size() >= limit) return std::nullopt;
    points.push_back(least);
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      if (points[next[i]] + sizes[i] == least) ++next[i];
    }
  }
}

std::vector<std::int64_t> raster_points(std::int64_t side,
                                        const std::vector<std::int64_t>& normal) {
  std::vector<std::int64_t> raster;
  std::size_t lowered = 0;  // index of the normal point at or below side - point
  for (auto point = normal.rbegin(); point != normal.rend(); ++point) {
    while (lowered + 1 < normal.size() && normal[lowered + 1] <= side - *point) ++lowered;
    if (raster.empty() || raster.back() != normal[lowered]) raster.push_back(normal[lowered]);
  }
  return raster;
}

PointIndex::PointIndex(std::vector<std::int64_t> points) : points_(std::move(points)) {
  constexpr std::int64_t most_buckets = 1 << 16;
  while ((points_.back() >> shift_) >= most_buckets) ++shift_;
  first_in_bucket_.resize(static_cast<std::size_t>(points_.back() >> shift_) + 1);
  std::uint32_t below = 0;
  for (std::size_t bucket = 0; bucket < first_in_bucket_.size(); ++bucket) {
    const std::int64_t start = static_cast<std::int64_t>(bucket) << shift_;
    while (below + 1 < points_.size() && points_[below + 1] <= start) ++below;
    first_in_bucket_[bucket] = below;
  }
}

}  // namespace mullion
