#pragma once

// Where a piece lies on the page, and how many points a point of it takes: from the mat's
// coordinates (engine/mat/mat.h) to points (1/72 in) of the page.

#include "engine/mat/mat.h"
#include "render/paper/path.h"

namespace mullion::proof {

struct View {
  paper::Spot origin;  // of the mat's upper left corner
  double scale = 1;    // 1: true size

  double size(Length length) const { return paper::points(length) * scale; }
  paper::Spot spot(Length x, Length y) const { return {origin.x + size(x), origin.y + size(y)}; }
  paper::Box box(const Rect& rect) const {
    const paper::Spot corner = spot(rect.left, rect.top);
    return {corner.x, corner.y, size(rect.width()), size(rect.height())};
  }
  paper::Path path(const Outline& outline) const {
    return paper::transformed(paper::trace(outline), {scale, 0, 0, scale, origin.x, origin.y});
  }
};

Outline outline_of(const Rect& rect);

}  // namespace mullion::proof
