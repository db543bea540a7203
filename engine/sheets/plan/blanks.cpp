#include "engine/sheets/plan/blanks.h"

#include <optional>

namespace mullion {
namespace {

// The largest rectangle in an ellipse measures 1/sqrt(2) of it both ways; 7071/10000 is less.
Length in_ellipse(Length side) {
  return Length::from_ticks((side * 7071).ticks() / 10'000);
}

std::optional<Fallout> fallout_of(const Window& window) {
  Length width = window.back.width(), height = window.back.height();
  switch (window.shape.kind) {
    case ShapeKind::rectangle:
      break;
    case ShapeKind::rounded:
    case ShapeKind::stepped:
    case ShapeKind::octagon:
      // Giving up both ends of the longer side loses least.
      (width <= height ? height : width) -= window.shape.corner * 2;
      break;
    case ShapeKind::ellipse:
      width = in_ellipse(width);
      height = in_ellipse(height);
      break;
    case ShapeKind::arch:
    case ShapeKind::outline:
      return std::nullopt;
  }
  width -= fallout_margin * 2;
  height -= fallout_margin * 2;
  if (width <= Length() || height <= Length()) return std::nullopt;
  return Fallout{width, height, window.openings.empty() ? 0 : window.openings.front()};
}

}  // namespace

std::vector<BlankOrder> blanks_of(const Mat& mat, int quantity, const std::string& order) {
  std::vector<BlankOrder> blanks;
  for (const MatLayer& layer : mat.layers) {
    BlankOrder blank;
    blank.order = order;
    blank.layer = layer.board.name;
    blank.layer_number = layer.number;
    blank.board = board_of(layer.board);
    blank.width = layer.outer.width();
    blank.height = layer.outer.height();
    blank.grain = layer.board.grain;
    blank.quantity = quantity;
    for (const Window& window : layer.windows) {
      if (const auto fallout = fallout_of(window)) blank.fallouts.push_back(*fallout);
    }
    blanks.push_back(std::move(blank));
  }
  return blanks;
}

}  // namespace mullion
