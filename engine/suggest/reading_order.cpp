#include "engine/suggest/reading_order.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace mullion::suggest {
namespace {

// Pictures that may change places: their group, the shorter and the longer side.
using Alike = std::tuple<int, Length, Length>;

struct Spot {
  Block* block;
  Rect rect;
};

// Pictures and spots that are alike, by whether they are upright.
struct Exchange {
  std::vector<int> pictures[2];
  std::vector<Spot> spots[2];
};

std::size_t upright(Length width, Length height) {
  return width < height ? 1 : 0;
}

// Where there are more pictures that hang one way than spots for them, the last that may are
// turned.
void turn_some(Exchange& exchange, const std::vector<Item>& items) {
  for (const std::size_t way : {0u, 1u}) {
    std::vector<int>& from = exchange.pictures[way];
    for (auto left = from.end(); left != from.begin();) {
      --left;
      if (from.size() <= exchange.spots[way].size()) break;
      if (!items[static_cast<std::size_t>(*left)].may_turn) continue;
      exchange.pictures[1 - way].push_back(*left);
      left = from.erase(left);
    }
  }
}

void fill(const Exchange& exchange, const std::vector<Item>& items) {
  for (const std::size_t way : {0u, 1u}) {
    std::vector<int> pictures = exchange.pictures[way];
    std::vector<Spot> spots = exchange.spots[way];
    std::sort(pictures.begin(), pictures.end());
    std::sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
      return std::tie(a.rect.top, a.rect.left) < std::tie(b.rect.top, b.rect.left);
    });
    for (std::size_t i = 0; i < spots.size(); ++i) {
      const Item& item = items[static_cast<std::size_t>(pictures[i])];
      const bool turned = upright(item.width, item.height) != way;
      const Length moved = spots[i].block->moved;
      *spots[i].block = picture_block(items, pictures[i], turned);
      spots[i].block->moved = moved;
    }
  }
}

void list_spots(Block& block, const std::vector<Rect>& rects, const std::vector<Item>& items,
                std::map<Alike, Exchange>& out) {
  for (Block& part : block.parts) list_spots(part, rects, items, out);
  if (block.kind != Block::Kind::picture) return;
  const auto number = static_cast<std::size_t>(block.item);
  const Item& item = items[number];
  if (item.order > 0) return;
  Exchange& exchange =
      out[{item.group, std::min(item.width, item.height), std::max(item.width, item.height)}];
  exchange.pictures[upright(item.width, item.height)].push_back(block.item);
  exchange.spots[upright(block.width, block.height)].push_back({&block, rects[number]});
}

}  // namespace

Block in_reading_order(const Block& block, const std::vector<Item>& items, Length gap) {
  if (block.kind == Block::Kind::ring) return block;  // they follow one another clockwise
  Block out = block;
  std::map<Alike, Exchange> exchanges;
  list_spots(out, places(block, gap, items.size()), items, exchanges);
  for (auto& [alike, exchange] : exchanges) {
    for (std::vector<int>& pictures : exchange.pictures) {
      std::sort(pictures.begin(), pictures.end());
    }
    turn_some(exchange, items);
    fill(exchange, items);
  }
  return out;
}

}  // namespace mullion::suggest
