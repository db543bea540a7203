#include <algorithm>
#include <cmath>

#include "render/paper/path.h"

namespace mullion::paper {

Path hatching(const Path& region, double spacing, double degrees) {
  // Turned so that the hatching lies level: line number n is y = n * spacing.
  const Transform level = turned(degrees), back = turned(-degrees);
  struct Crossing {
    int row;
    double x;
  };
  std::vector<Crossing> crossings;
  for (const Edge& edge : flattened(region)) {
    const Spot a = level(edge.from), b = level(edge.to);
    const double low = std::min(a.y, b.y), high = std::max(a.y, b.y);
    // Half-open, so that a corner on a line counts once.
    for (int row = static_cast<int>(std::ceil(low / spacing)); row * spacing < high; ++row) {
      const double t = (row * spacing - a.y) / (b.y - a.y);
      crossings.push_back({row, a.x + t * (b.x - a.x)});
    }
  }
  std::sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
    return a.row != b.row ? a.row < b.row : a.x < b.x;
  });
  Path lines;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    const double y = crossings[i].row * spacing;
    lines.move_to(back({crossings[i].x, y})).line_to(back({crossings[i + 1].x, y}));
  }
  return lines;
}

}  // namespace mullion::paper
