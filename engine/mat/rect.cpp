#include "engine/mat/rect.h"

#include <algorithm>

namespace mullion {

Rect inset(const Rect& rect, const Sides& by) {
  return {rect.left + by.left, rect.top + by.top, rect.right - by.right, rect.bottom - by.bottom};
}

Rect outset(const Rect& rect, Length by) {
  return inset(rect, {-by, -by, -by, -by});
}

bool contains(const Rect& outer, const Rect& inner) {
  return outer.left <= inner.left && outer.top <= inner.top && inner.right <= outer.right &&
         inner.bottom <= outer.bottom;
}

Rect united(const Rect& a, const Rect& b) {
  return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
          std::max(a.bottom, b.bottom)};
}

Rect common(const Rect& a, const Rect& b) {
  return {std::max(a.left, b.left), std::max(a.top, b.top), std::min(a.right, b.right),
          std::min(a.bottom, b.bottom)};
}

Length gap_between(const Rect& a, const Rect& b) {
  return std::max({b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom});
}

Rect mirrored(const Rect& rect, Length width) {
  return {width - rect.right, rect.top, width - rect.left, rect.bottom};
}

}  // namespace mullion
