#include "render/proof/shadow.h"

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

constexpr int steps = 11;
constexpr double lean = 0.35;  // how far the light moves a shadow to the lower right

}  // namespace

void shadow_inside(paper::Canvas& canvas, const Outline& edge, const View& view, double reach,
                   double strength) {
  canvas.clip(edge, view.origin, view.scale);
  for (int i = 1; i <= steps; ++i) {
    const double width = 2 * reach * i / steps;
    const double shift = width / 2 * lean;
    canvas.outline(edge, {view.origin.x + shift, view.origin.y + shift}, view.scale,
                   {width, black, {}, strength / steps});
  }
  canvas.end_clip();
}

void shadow_below(paper::Canvas& canvas, const paper::Box& box, double reach, double strength) {
  for (int i = steps; i >= 1; --i) {
    const double grow = reach * (2.0 * i / steps - 1) / 2;
    const double x = box.x + reach * lean - grow, y = box.y + reach * 2 * lean - grow;
    canvas.fill(paper::Box{x, y, box.width + 2 * grow, box.height + 2 * grow},
                {black, strength / steps});
  }
}

}  // namespace mullion::proof
