#include "render/cutsheet/tiles.h"

#include <algorithm>

#include "render/paper/drawing.h"

namespace mullion::cutsheet {

using paper::Drawing;
using paper::Spot;

paper::TextStyle tile_heading(const Look& look) {
  return {.size = look.text() * 1.05, .bold = true};
}

void draw_fitted(Drawing& page, const std::string& text, Spot at, double width,
                 const paper::TextStyle& style) {
  page.text(text, at, paper::narrowed(text, width, style));
}

double tile_width(const Flow& flow, const Look& look) {
  return flow.width() / look.columns;
}

void add_tiles(Flow& flow, const std::vector<Tile>& tiles, const Look& look) {
  const double width = tile_width(flow, look);
  for (std::size_t first = 0; first < tiles.size();) {
    std::size_t last = std::min(first + static_cast<std::size_t>(look.columns), tiles.size());
    if (last - first > 1 && last < tiles.size() && tiles[last - 1].leads) --last;
    double height = 0;
    for (std::size_t i = first; i < last; ++i) height = std::max(height, tiles[i].height);
    flow.block(height + tile_gap, [&](Drawing& page, Spot at) {
      for (std::size_t i = first; i < last; ++i) {
        const double x = at.x + width * static_cast<double>(i - first);
        tiles[i].draw(page, {x, at.y, width, height});
      }
    });
    first = last;
  }
}

}  // namespace mullion::cutsheet
