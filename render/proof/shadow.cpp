#include "render/proof/shadow.h"

#include <algorithm>

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

constexpr int steps = 11;
// How far the light, from the upper left, moves a shadow: of 1 it would leave none of it on the
// other side.
constexpr double inside_lean = 0.7, wall_lean = 0.35;

}  // namespace

void shadow_inside(paper::Drawing& page, const Outline& edge, const View& view, double reach,
                   double strength) {
  const paper::Path path = view.path(edge);
  paper::Drawing shadow;
  for (int i = 1; i <= steps; ++i) {
    const double half_width = reach * i / steps / (1 + inside_lean);
    const double shift = half_width * inside_lean;
    shadow.stroke(transformed(path, paper::shifted(shift, shift)),
                  {2 * half_width, black, {}, strength / steps});
  }
  page.clipped(std::move(shadow), path);
}

void shadow_below(paper::Drawing& page, const paper::Box& box, double reach, double strength) {
  const double smallest = std::min(box.width, box.height) / 2;
  for (int i = steps; i >= 1; --i) {
    const double grow = reach * (2.0 * i / steps - 1) / 2;
    const paper::Box cast{box.x + reach * wall_lean - grow, box.y + reach * 2 * wall_lean - grow,
                          box.width + 2 * grow, box.height + 2 * grow};
    page.fill(paper::rounded_rectangle(cast, std::clamp(reach / 2 + grow, 0.0, smallest)),
              {black, strength / steps});
  }
}

}  // namespace mullion::proof
