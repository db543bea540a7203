#pragma once

// The places along one side of a sheet where a cut can be of use.
//
// Whole numbers of any one unit. A normal point is a sum of blank sizes; every pattern can be
// pushed up and to the left until all cuts lie on normal points (J. C. Herz, "Recursive
// computational procedure for two-dimensional stock cutting", IBM Journal of Research and
// Development 16, 1972). A raster point is what is left of the sheet's side beside a normal point,
// lowered to a normal point; cuts on raster points are enough, and there are fewer (J. Terno,
// R. Lindemann, G. Scheithauer, "Zuschnittprobleme und ihre praktische Loesung", 1987).

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace mullion {

// Ascending, from 0 to at most `side`; nothing when there are more than `limit`. Sizes are
// positive.
std::optional<std::vector<std::int64_t>> normal_points(std::int64_t side,
                                                       const std::vector<std::int64_t>& sizes,
                                                       std::size_t limit);

std::vector<std::int64_t> raster_points(std::int64_t side, const std::vector<std::int64_t>& normal);

// Finds points by value in about constant time.
class PointIndex {
 public:
  PointIndex() = default;
  explicit PointIndex(std::vector<std::int64_t> points);  // ascending, from 0

  std::size_t size() const { return points_.size(); }
  std::int64_t operator[](std::size_t i) const { return points_[i]; }
  std::int64_t back() const { return points_.back(); }

  // The last point that is not above `value`, which lies between 0 and the last point.
  std::size_t at_or_below(std::int64_t value) const {
    std::size_t i = first_in_bucket_[static_cast<std::size_t>(value >> shift_)];
    while (i + 1 < points_.size() && points_[i + 1] <= value) ++i;
    return i;
  }

 private:
  std::vector<std::int64_t> points_;
  int shift_ = 0;
  std::vector<std::uint32_t> first_in_bucket_;  // a bucket spans 2^shift_ units
};

// The points of one side of a sheet.
struct CutPoints {
  PointIndex normal, raster;
};

}  // namespace mullion
