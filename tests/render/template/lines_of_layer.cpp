#include "tests/render/template/lines_of_layer.h"

#include <algorithm>
#include <stdexcept>

namespace made {

using namespace mullion;
using oracle::DrawnPage;
using oracle::Spot;

BoardBehind::BoardBehind(const DrawnPage& page, const BoardCuts& layer)
    : right_(to_points(layer.blank.right)) {
  const auto corner = oracle::find_rectangle(page, to_points(layer.blank.width()),
                                             to_points(layer.blank.height()), hundredth_mm);
  if (!corner) throw std::runtime_error("the page shows no board of the layer's size");
  corner_ = {corner->x, corner->y - to_points(layer.blank.top)};
}

Spot BoardBehind::place(double x_ticks, double y_ticks) const {
  return {corner_.x + right_ - x_ticks * 72 / ticks_per_inch,
          corner_.y + y_ticks * 72 / ticks_per_inch};
}

Spot BoardBehind::place(Length x, Length y) const {
  return place(static_cast<double>(x.ticks()), static_cast<double>(y.ticks()));
}

bool shows_straight_cuts(const DrawnPage& page, const BoardBehind& board, const Rect& r,
                         Length over) {
  const auto shown = [&](Length x1, Length y1, Length x2, Length y2) {
    return oracle::shows_line(page, board.place(x1, y1), board.place(x2, y2), hundredth_mm);
  };
  return shown(r.left - over, r.top, r.right + over, r.top) &&
         shown(r.left - over, r.bottom, r.right + over, r.bottom) &&
         shown(r.left, r.top - over, r.left, r.bottom + over) &&
         shown(r.right, r.top - over, r.right, r.bottom + over);
}

double straying(const oracle::NearestInk& ink, const BoardBehind& board, const Outline& outline) {
  double most = 0;
  for (const Vector& v : flatten(outline, Length::from_ticks(16))) {
    most = std::max(most, ink.distance(board.place(v.x, v.y)));
  }
  return most;
}

std::string missing_lines(const DrawnPage& page, const BoardCuts& layer) {
  const BoardBehind board(page, layer);
  const oracle::NearestInk solid(page, false), dashed(page, true);
  std::string missing;
  for (const Window& window : layer.windows()) {
    const std::string name = "window " + std::to_string(window.openings.at(0));
    if (window.shape.kind == ShapeKind::rectangle &&
        !shows_straight_cuts(page, board, window.back, layer.over_cut)) {
      missing += name + ": a cut\n";
    }
    if (straying(solid, board, window.back_edge) > hundredth_mm) {
      missing += name + ": the back edge\n";
    }
    if (straying(dashed, board, window.face_edge) > hundredth_mm) {
      missing += name + ": the face edge\n";
    }
  }
  return missing;
}

}  // namespace made
