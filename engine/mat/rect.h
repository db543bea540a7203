#pragma once

// Rectangles, moved side by side.

#include "engine/layout/layout.h"

namespace mullion {

Rect inset(const Rect& rect, const Sides& by);
Rect outset(const Rect& rect, Length by);
bool contains(const Rect& outer, const Rect& inner);
Rect united(const Rect& a, const Rect& b);
Rect common(const Rect& a, const Rect& b);  // what both hold; inside out where they are apart

// The width of the bar between two rectangles, across or down, whichever is wider; negative where
// they overlap.
Length gap_between(const Rect& a, const Rect& b);

Rect mirrored(const Rect& rect, Length width);

}  // namespace mullion
