#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/paper/path.h"

namespace mullion::paper {

Spot Transform::operator()(Spot spot) const {
  return {xx * spot.x + xy * spot.y + x0, yx * spot.x + yy * spot.y + y0};
}

Transform shifted(double x, double y) {
  return {1, 0, 0, 1, x, y};
}

Transform scaled(double factor) {
  return {factor, 0, 0, factor, 0, 0};
}

Transform turned(double degrees) {
  if (degrees == 0) return {};
  if (degrees == 90) return {0, 1, -1, 0, 0, 0};
  if (degrees == -90 || degrees == 270) return {0, -1, 1, 0, 0, 0};
  const double angle = degrees * std::numbers::pi / 180;
  const double c = std::cos(angle), s = std::sin(angle);
  return {c, s, -s, c, 0, 0};
}

Transform then(const Transform& first, const Transform& second) {
  const Spot origin = second({first.x0, first.y0});
  return {second.xx * first.xx + second.xy * first.yx,
          second.yx * first.xx + second.yy * first.yx,
          second.xx * first.xy + second.xy * first.yy,
          second.yx * first.xy + second.yy * first.yy,
          origin.x,
          origin.y};
}

Transform inverse(const Transform& map) {
  const double determinant = map.xx * map.yy - map.xy * map.yx;
  Transform result{map.yy / determinant,
                   -map.yx / determinant,
                   -map.xy / determinant,
                   map.xx / determinant,
                   0,
                   0};
  const Spot origin = result({map.x0, map.y0});
  result.x0 = -origin.x;
  result.y0 = -origin.y;
  return result;
}

Box bounds_of(const Transform& map, const Box& box) {
  const Spot corners[] = {map({box.x, box.y}), map({box.x + box.width, box.y}),
                          map({box.x + box.width, box.y + box.height}),
                          map({box.x, box.y + box.height})};
  Spot low = corners[0], high = corners[0];
  for (const Spot& corner : corners) {
    low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
    high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
  }
  return {low.x, low.y, high.x - low.x, high.y - low.y};
}

}  // namespace mullion::paper
