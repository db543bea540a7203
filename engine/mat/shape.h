#pragma once

// Outlines of window shapes, at a distance outside the shape's own edge.
//
// The shape (its corner, step or rise) is stated for the sight edge: the back edge of the lowest
// layer, in which the picture shows. Every other edge of the window is a true parallel curve of
// that one, `outward` (>= 0) away. Straight edges and corners of 90 degrees are exact; curves are
// cubic Beziers through points of the parallel curve, in whole ticks, and lie within
// `outline_tolerance` of it.

#include <tl/expected.hpp>

#include "engine/job/job.h"
#include "engine/layout/layout.h"
#include "engine/mat/outline.h"

namespace mullion {

inline constexpr Length outline_tolerance = Length::from_ticks(8);  // 0.005 mm

// The error is a sentence: what about the shape does not fit its rectangle.
tl::expected<Outline, std::string> shape_outline(const ShapeSpec& shape, const Rect& sight,
                                                 Length outward);

// The shape as it is at that distance: a corner's radius grows, an octagon's leg too.
ShapeSpec shape_at(const ShapeSpec& shape, const Rect& sight, Length outward);

}  // namespace mullion
