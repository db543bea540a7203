#include "render/cutsheet/taken.h"

#include <algorithm>
#include <cmath>

namespace mullion::cutsheet {

using paper::Box;
using paper::Spot;

namespace {

// By what of the line is left between the box's sides (Liang and Barsky's clipping).
bool meets(const Box& box, Spot a, Spot b) {
  double from = 0, to = 1;
  const auto clip = [&](double start, double step, double least, double most) {
    if (std::abs(step) < 1e-9) return start >= least && start <= most;
    const double p = (least - start) / step, q = (most - start) / step;
    from = std::max(from, std::min(p, q));
    to = std::min(to, std::max(p, q));
    return from <= to;
  };
  return clip(a.x, b.x - a.x, box.x, box.x + box.width) &&
         clip(a.y, b.y - a.y, box.y, box.y + box.height);
}

}  // namespace

void Taken::add(const std::vector<Spot>& way) {
  for (std::size_t i = 1; i < way.size(); ++i) add(way[i - 1], way[i]);
}

bool Taken::is_free(const Box& box) const {
  return std::none_of(lines_.begin(), lines_.end(),
                      [&](const auto& line) { return meets(box, line.first, line.second); }) &&
         std::none_of(boxes_.begin(), boxes_.end(),
                      [&](const Box& other) { return overlap(box, other); });
}

Box text_box(Spot middle, double width, double type) {
  return {middle.x - width / 2 - 0.7, middle.y - type * 0.45, width + 1.4, type * 0.9};
}

double distance_between(Spot spot, Spot a, Spot b) {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double square = dx * dx + dy * dy;
  const double along = square > 0 ? ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / square : 0;
  const double t = std::clamp(along, 0.0, 1.0);
  return std::hypot(a.x + t * dx - spot.x, a.y + t * dy - spot.y);
}

}  // namespace mullion::cutsheet
