#pragma once

// Colours made lighter or darker, as light does it.

#include "engine/job/job.h"

namespace mullion::proof {

// 0: the first colour, 1: the second.
Colour mixed(const Colour& a, const Colour& b, double part);

inline constexpr Colour black{0, 0, 0}, white{255, 255, 255};

// -1: black, 0: as it is, 1: white.
Colour lit(const Colour& colour, double light);

// Relative luminance and contrast ratio (WCAG 2.2, definitions).
double luminance(const Colour& colour);
double contrast(const Colour& a, const Colour& b);

}  // namespace mullion::proof
