#include "engine/suggest/block.h"

#include <algorithm>

namespace mullion::suggest {
namespace {

void add_part(Block& block, const Block& part) {
  if (part.kind == block.kind) {
    block.parts.insert(block.parts.end(), part.parts.begin(), part.parts.end());
  } else {
    block.parts.push_back(part);
  }
}

void place(const Block& block, Length left, Length top, Length gap, std::vector<Rect>& out) {
  if (block.kind == Block::Kind::picture) {
    out[static_cast<std::size_t>(block.item)] = {left, top, left + block.width, top + block.height};
    return;
  }
  for (const Block& part : block.parts) {
    if (block.kind == Block::Kind::row) {
      place(part, left, top + half_rounded_down(block.height - part.height), gap, out);
      left += part.width + gap;
    } else {
      place(part, left + half_rounded_down(block.width - part.width), top, gap, out);
      top += part.height + gap;
    }
  }
}

std::string key(const Block& block, bool flip_rows, bool flip_columns) {
  if (block.kind == Block::Kind::picture) {
    return std::to_string(block.width.ticks()) + "x" + std::to_string(block.height.ticks());
  }
  const bool row = block.kind == Block::Kind::row;
  std::vector<std::string> parts;
  for (const Block& part : block.parts) parts.push_back(key(part, flip_rows, flip_columns));
  if (row ? flip_rows : flip_columns) std::reverse(parts.begin(), parts.end());
  std::string out = row ? "(" : "[";
  for (const std::string& part : parts) out += part + " ";
  return out + (row ? ")" : "]");
}

}  // namespace

Block picture_block(const std::vector<Item>& items, int item, bool turned) {
  const Item& it = items[static_cast<std::size_t>(item)];
  Block out;
  out.item = item;
  out.turned = turned;
  out.width = turned ? it.height : it.width;
  out.height = turned ? it.width : it.height;
  return out;
}

Block joined(Block::Kind kind, const Block& first, const Block& second, Length gap) {
  Block out;
  out.kind = kind;
  add_part(out, first);
  add_part(out, second);
  if (kind == Block::Kind::row) {
    out.width = first.width + gap + second.width;
    out.height = std::max(first.height, second.height);
  } else {
    out.height = first.height + gap + second.height;
    out.width = std::max(first.width, second.width);
  }
  return out;
}

std::vector<Rect> places(const Block& block, Length gap, std::size_t items) {
  std::vector<Rect> out(items);
  place(block, Length(), Length(), gap, out);
  return out;
}

std::string look_key(const Block& block) {
  std::string best = key(block, false, false);
  for (const auto& [rows, columns] : {std::pair{true, false}, {false, true}, {true, true}}) {
    best = std::min(best, key(block, rows, columns));
  }
  return best;
}

}  // namespace mullion::suggest
