#include <algorithm>

#include "render/proof/blocks.h"
#include "render/proof/sizes.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

const Outline* outline_with(const Mat& mat, int number) {
  for (auto layer = mat.layers.rbegin(); layer != mat.layers.rend(); ++layer) {
    for (const Window& window : layer->windows) {
      if (window.openings.size() == 1 && window.openings.front() == number) {
        return &window.back_edge;
      }
    }
  }
  return nullptr;
}

}  // namespace

double draw_key(paper::Drawing& page, const Piece& piece, const paper::Box& box) {
  const Mat& mat = *piece.mat;
  View view;
  const double width = paper::points(mat.outer.width()), height = paper::points(mat.outer.height());
  view.scale = std::min(box.width / width, box.height / height);
  view.origin = {box.x, box.y};
  page.stroke(paper::rectangle(view.box(mat.outer)), {0.6, type::ink, {}, 1});
  for (const SeenOpening& opening : seen_openings(mat)) {
    const paper::Box seen = view.box(opening.sight);
    const Outline* edge = outline_with(mat, opening.number);
    const Outline plain = outline_of(opening.sight);
    page.stroke(view.path(edge != nullptr ? *edge : plain), {0.4, type::quiet, {}, 1});
    const double size = std::clamp(std::min(seen.height * 0.6, seen.width * 0.45), 2.0, 9.0);
    page.text(std::to_string(opening.number),
              {seen.x + seen.width / 2, seen.y + seen.height / 2 + size * 0.36},
              type::centred(type::body(size)));
  }
  return height * view.scale;
}

}  // namespace mullion::proof
