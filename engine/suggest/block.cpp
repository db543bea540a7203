#include "engine/suggest/block.h"

#include <algorithm>
#include <iterator>

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
  if (!block.corners.empty()) {
    for (std::size_t i = 0; i < block.parts.size(); ++i) {
      const Corner& corner = block.corners[i];
      place(block.parts[i], left + corner.left, top + corner.top, gap, out);
    }
    return;
  }
  const auto aligned = [&](Length room) {
    return block.align == Align::start ? Length()
           : block.align == Align::end ? room
                                       : half_rounded_down(room);
  };
  for (std::size_t i = 0; i < block.parts.size(); ++i) {
    const Block& part = block.parts[i];
    const Length after = i < block.gaps.size() ? block.gaps[i] : gap;
    if (block.kind == Block::Kind::row) {
      place(part, left, top + aligned(block.height - part.height) + part.moved, gap, out);
      left += part.width + after;
    } else {
      place(part, left + aligned(block.width - part.width) + part.moved, top, gap, out);
      top += part.height + after;
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

bool is_empty(const Block& block) {
  return block.kind != Block::Kind::picture && block.parts.empty();
}

}  // namespace

bool is_slicing(const Block& block) {
  return block.corners.empty() && block.moved == Length() &&
         std::all_of(block.parts.begin(), block.parts.end(), is_slicing);
}

Block picture_block(const std::vector<Item>& items, int item, bool turned) {
  const Item& it = items[static_cast<std::size_t>(item)];
  Block out;
  out.item = item;
  out.turned = turned;
  out.width = turned ? it.height : it.width;
  out.height = turned ? it.width : it.height;
  return out;
}

Length along(const Block& block, Block::Kind direction) {
  return direction == Block::Kind::row ? block.width : block.height;
}

Block::Kind other_way(Block::Kind direction) {
  return direction == Block::Kind::row ? Block::Kind::column : Block::Kind::row;
}

double area(const Block& block) {
  return to_inches(block.width) * to_inches(block.height);
}

Block chain(Block::Kind kind, const std::vector<Block>& blocks, Length gap) {
  Block out = blocks.front();
  for (std::size_t i = 1; i < blocks.size(); ++i) out = joined(kind, out, blocks[i], gap);
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

void settle(Block& block, Length gap) {
  if (block.kind == Block::Kind::picture) return;
  std::vector<Block> parts;
  for (Block& part : block.parts) {
    settle(part, gap);
    if (is_empty(part)) continue;
    if (part.kind == block.kind) {
      std::move(part.parts.begin(), part.parts.end(), std::back_inserter(parts));
    } else {
      parts.push_back(std::move(part));
    }
  }
  if (parts.size() == 1) {
    block = Block(std::move(parts.front()));
    return;
  }
  block.parts = std::move(parts);
  const bool is_row = block.kind == Block::Kind::row;
  Length along = gap * (static_cast<std::int64_t>(block.parts.size()) - 1), across;
  for (const Block& part : block.parts) {
    along += is_row ? part.width : part.height;
    across = std::max(across, is_row ? part.height : part.width);
  }
  block.width = is_row ? along : across;
  block.height = is_row ? across : along;
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
