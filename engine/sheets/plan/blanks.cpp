#include "engine/sheets/plan/blanks.h"

#include <optional>

#include "engine/sheets/plan/inner_rectangle.h"

namespace mullion {
namespace {

std::optional<Fallout> fallout_of(const Window& window) {
  const std::optional<Rect> rect = inner_rectangle(window.back_edge);
  if (!rect) return std::nullopt;
  const Length width = rect->width() - fallout_margin * 2;
  const Length height = rect->height() - fallout_margin * 2;
  if (width <= Length() || height <= Length()) return std::nullopt;
  return Fallout{width, height, window.openings.empty() ? 0 : window.openings.front(),
                 window.shape.kind == ShapeKind::rectangle && *rect == window.back};
}

}  // namespace

std::vector<BlankOrder> blanks_of(const Cuts& cuts, int quantity, const std::string& order) {
  std::vector<BlankOrder> blanks;
  for (const BoardCuts& board : cuts.layers) {
    const MatLayer& layer = *board.layer;
    BlankOrder blank;
    blank.order = order;
    blank.layer = layer.board.name;
    blank.layer_number = layer.number;
    blank.board = board_of(layer.board);
    blank.width = board.blank.width();
    blank.height = board.blank.height();
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
