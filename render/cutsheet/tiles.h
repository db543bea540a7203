#pragma once

// Tiles in rows, read like a strip of pictures: what to set, then each way the board lies with the
// cuts that are made so.

#include <functional>
#include <vector>

#include "render/cutsheet/flow.h"

namespace mullion::cutsheet {

struct Tile {
  double height = 0;
  std::function<void(paper::Drawing&, const paper::Box&)> draw;
  bool leads = false;  // into the next tile: never the last of a row
};

inline constexpr double tile_gap = 7;  // between a tile's contents and the next tile

double tile_width(const Flow& flow, const Look& look);

// Rows of `look.columns`; a row is not broken.
void add_tiles(Flow& flow, const std::vector<Tile>& tiles, const Look& look);

paper::TextStyle tile_heading(const Look& look);

// Set smaller where it is wider than the room.
void draw_fitted(paper::Drawing& page, const std::string& text, paper::Spot at, double width,
                 const paper::TextStyle& style);

}  // namespace mullion::cutsheet
