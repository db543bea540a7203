#include "render/proof/windows.h"

#include "render/proof/tone.h"

namespace mullion::proof {
namespace {

// Light from the upper left: the bevels below and to the right of a window face it.
constexpr double shade_top = -0.15, shade_left = -0.09, shade_right = -0.02, shade_bottom = 0;

void draw_side(paper::Drawing& page, paper::Spot a, paper::Spot b, paper::Spot c, paper::Spot d,
               const Colour& colour) {
  page.fill(paper::polygon({a, b, c, d}), {colour});
}

void draw_straight_bevel(paper::Drawing& page, const Window& window, const Colour& core,
                         const View& view) {
  const auto corners = [&](const Rect& r) {
    return std::vector<paper::Spot>{view.spot(r.left, r.top), view.spot(r.right, r.top),
                                    view.spot(r.right, r.bottom), view.spot(r.left, r.bottom)};
  };
  const auto face = corners(window.face), back = corners(window.back);
  draw_side(page, face[0], face[1], back[1], back[0], lit(core, shade_top));
  draw_side(page, face[3], face[0], back[0], back[3], lit(core, shade_left));
  draw_side(page, face[1], face[2], back[2], back[1], lit(core, shade_right));
  draw_side(page, face[2], face[3], back[3], back[2], lit(core, shade_bottom));
}

// Curves are shaded by one sweep of light across the window, on the bevel alone.
void draw_curved_bevel(paper::Drawing& page, const Window& window, const Colour& core,
                       const View& view) {
  paper::Path bevel = view.path(window.face_edge);
  bevel.append(view.path(window.back_edge));
  page.fill(bevel, {core});
  const paper::Box box = view.box(window.face);
  page.shade(std::move(bevel), {{box.x, box.y},
                                {box.x + box.width, box.y + box.height},
                                {{0.1, black, -shade_top}, {0.9, black, 0}}});
}

}  // namespace

void draw_board(paper::Drawing& page, const MatLayer& layer, const Rect& outer, const View& view) {
  paper::Path board = paper::rectangle(view.box(outer));
  for (const Window& window : layer.windows) board.append(view.path(window.face_edge));
  page.fill(std::move(board), {layer.board.colour});
}

void draw_bevel(paper::Drawing& page, const Window& window, const Colour& core, const View& view) {
  if (window.shape.kind == ShapeKind::rectangle) {
    draw_straight_bevel(page, window, core, view);
  } else {
    draw_curved_bevel(page, window, core, view);
  }
}

}  // namespace mullion::proof
