#pragma once

// The `transform` attribute of SVG (SVG 1.1, 7.6): matrix, translate, scale, rotate, skewX, skewY.

#include <optional>
#include <string_view>

#include "engine/mat/curve.h"

namespace mullion {

inline constexpr double largest_svg_number = 1e9;

// x' = a x + c y + e, y' = b x + d y + f.
struct Transform {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  Vector operator()(Vector v) const { return {a * v.x + c * v.y + e, b * v.x + d * v.y + f}; }
  friend Transform operator*(const Transform& outer, const Transform& inner);
};

// Nothing where the text is not a list of transforms or a number is out of range.
std::optional<Transform> parse_transform(std::string_view text);

}  // namespace mullion
