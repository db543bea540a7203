#include "render/proof/tone.h"

#include <algorithm>
#include <cmath>

namespace mullion::proof {

Colour mixed(const Colour& a, const Colour& b, double part) {
  const auto mix = [&](std::uint8_t x, std::uint8_t y) {
    return static_cast<std::uint8_t>(std::lround(x + (y - x) * part));
  };
  return {mix(a.red, b.red), mix(a.green, b.green), mix(a.blue, b.blue)};
}

Colour lit(const Colour& colour, double light) {
  return mixed(colour, light < 0 ? black : white, std::abs(light));
}

double luminance(const Colour& colour) {
  const auto linear = [](std::uint8_t value) {
    const double c = value / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

double contrast(const Colour& a, const Colour& b) {
  const double one = luminance(a), other = luminance(b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

}  // namespace mullion::proof
