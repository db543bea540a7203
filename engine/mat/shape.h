#pragma once

// Outlines of window shapes, at a distance outside the shape's own edge.
//
// The shape (its corner, step or rise) is stated for the sight edge: the back edge of the lowest
// layer, in which the picture shows. Every other edge of the window is a true parallel curve of
// that one, `outward` (>= 0) away; where two straight or curved cuts meet at an angle, both run on
// until they meet, as a blade's do. Straight edges at right angles are exact; the rest is rounded
// to whole ticks, and curves are cubic Beziers that lie within `outline_tolerance` of the true
// one.
//
// A free outline (ShapeKind::outline) has no formula: see free_outline.h and parallel.h.

#include <tl/expected.hpp>

#include "engine/mat/outline.h"

namespace mullion {

inline constexpr Length outline_tolerance = Length::from_ticks(8);  // 0.005 mm

// The error is a sentence: what about the shape does not fit its rectangle.
tl::expected<Outline, std::string> shape_outline(const ShapeSpec& shape, const Rect& sight,
                                                 Length outward);

// The shape as it is at that distance: a corner's radius grows, an octagon's leg too.
ShapeSpec shape_at(const ShapeSpec& shape, const Rect& sight, Length outward);

// Whether each side of the shape can be moved by a distance of its own: those of straight edges at
// right angles (rectangle, stepped corners).
bool moves_side_by_side(ShapeKind kind);

}  // namespace mullion
