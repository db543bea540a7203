#pragma once

// Rectangles, moved side by side.

#include "engine/layout/layout.h"

namespace mullion {

Rect inset(const Rect& rect, const Sides& by);
Rect outset(const Rect& rect, Length by);
bool contains(const Rect& outer, const Rect& inner);
Rect united(const Rect& a, const Rect& b);
Rect mirrored(const Rect& rect, Length width);

}  // namespace mullion
