#pragma once

// Type and margins that the pages of a sheet plan share, in points.

#include "render/paper/drawing.h"

namespace mullion {

inline constexpr double margin = 36;
inline constexpr double least_type = 0.75;  // a longer text is set smaller, down to this
inline const paper::TextStyle title_style{15, true, {0, 0, 0}, paper::Anchor::left, 0};

}  // namespace mullion
