#include "engine/suggest/difference.h"

#include <algorithm>
#include <cmath>

namespace mullion::suggest {
namespace {

// An opening from the board's centre, where the board's area is 1.
struct Pane {
  double left, top, right, bottom;
};

std::vector<Pane> panes(const std::vector<Rect>& rects, const Board& board) {
  const double w = to_inches(board.width), h = to_inches(board.height), unit = std::sqrt(w * h);
  std::vector<Pane> out;
  out.reserve(rects.size());
  for (const Rect& r : rects) {
    out.push_back({(to_inches(r.left) - w / 2) / unit, (to_inches(r.top) - h / 2) / unit,
                   (to_inches(r.right) - w / 2) / unit, (to_inches(r.bottom) - h / 2) / unit});
  }
  return out;
}

double area(const std::vector<Pane>& panes) {
  double sum = 0;
  for (const Pane& p : panes) sum += (p.right - p.left) * (p.bottom - p.top);
  return sum;
}

double common_area(const std::vector<Pane>& a, const std::vector<Pane>& b) {
  double sum = 0;
  for (const Pane& p : a) {
    for (const Pane& q : b) {
      const double across = std::min(p.right, q.right) - std::max(p.left, q.left);
      const double down = std::min(p.bottom, q.bottom) - std::max(p.top, q.top);
      if (across > 0 && down > 0) sum += across * down;
    }
  }
  return sum;
}

void mirror_across(std::vector<Pane>& panes) {
  for (Pane& p : panes) p = {-p.right, p.top, -p.left, p.bottom};
}
void mirror_down(std::vector<Pane>& panes) {
  for (Pane& p : panes) p = {p.left, -p.bottom, p.right, -p.top};
}

}  // namespace

std::string plan_key(const Block& block) {
  if (block.kind == Block::Kind::picture) {
    return std::to_string(block.width.ticks()) + "x" + std::to_string(block.height.ticks());
  }
  std::vector<std::string> parts;
  for (const Block& part : block.parts) parts.push_back(plan_key(part));
  std::sort(parts.begin(), parts.end());
  const bool row = block.kind == Block::Kind::row;
  const bool is_moved = std::any_of(block.parts.begin(), block.parts.end(),
                                    [](const Block& part) { return part.moved != Length(); });
  std::string out = row ? "(" : "[";
  if (block.kind == Block::Kind::ring) out = "o";
  if (block.kind == Block::Kind::pinwheel) out = "+";
  if (is_moved) out += "~";
  for (const std::string& part : parts) out += part + " ";
  return out + (row ? ")" : "]");
}

double coincidence(const std::vector<Rect>& a, const Board& a_board, const std::vector<Rect>& b,
                   const Board& b_board) {
  const std::vector<Pane> still = panes(a, a_board);
  std::vector<Pane> moved = panes(b, b_board);
  double most = 0;
  for (int way = 0; way < 4; ++way) {
    most = std::max(most, common_area(still, moved));
    way % 2 == 0 ? mirror_across(moved) : mirror_down(moved);
  }
  return most / std::max(area(still), area(moved));
}

}  // namespace mullion::suggest
