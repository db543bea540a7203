#include "engine/suggest/criteria.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace mullion::suggest {
namespace {

double number(Length length) {
  return static_cast<double>(length.ticks());
}
double area_of(const Rect& r) {
  return number(r.width()) * number(r.height());
}

double border_likeness(Length width, Length height, const Board& board) {
  const double across = number(board.width - width), down = number(board.height - height);
  return std::max(across, down) <= 0
             ? 0
             : std::max(0.0, std::min(across, down)) / std::max(across, down);
}

double shape_of(const Board& board) {
  constexpr double long_enough = 1.5, too_long = 3;
  const double ratio =
      number(std::max(board.width, board.height)) / number(std::min(board.width, board.height));
  return std::clamp((too_long - ratio) / (too_long - long_enough), 0.0, 1.0);
}

double balance_of(const std::vector<Rect>& rects, const Block& block, const Board& board) {
  double mass = 0, x = 0, y = 0;
  for (const Rect& r : rects) {
    const double m = area_of(r);
    mass += m;
    x += m * number(r.left + r.right) / 2;
    y += m * number(r.top + r.bottom) / 2;
  }
  const double width = number(board.width), height = number(board.height);
  const double rise =
      (height - number(block.height)) * (0.5 - (width + number(block.width)) / (4 * width));
  const double away = std::hypot(x / mass - width / 2, y / mass - (height / 2 - rise));
  return std::max(0.0, 1 - 4 * away / std::hypot(width, height));
}

// 1 where all openings share two edges, 0 where every edge stands alone.
double alignment_of(const std::vector<Rect>& rects) {
  if (rects.size() < 2) return 1;
  std::map<Length, int> across, down;
  for (const Rect& r : rects) {
    ++across[r.left];
    ++across[r.right];
    ++down[r.top];
    ++down[r.bottom];
  }
  const double distinct = static_cast<double>(across.size() + down.size());
  const double most = 4.0 * static_cast<double>(rects.size());
  return (most - distinct) / (most - 4);
}

double common_area(const Rect& a, const Rect& b) {
  const double across = number(std::min(a.right, b.right) - std::max(a.left, b.left));
  const double down = number(std::min(a.bottom, b.bottom) - std::max(a.top, b.top));
  return std::max(0.0, across) * std::max(0.0, down);
}

double symmetry_of(const std::vector<Rect>& rects, const Board& board) {
  double all = 0, across = 0, down = 0;
  for (const Rect& a : rects) {
    all += area_of(a);
    for (const Rect& b : rects) {
      across += common_area(a, {board.width - b.right, b.top, board.width - b.left, b.bottom});
      down += common_area(a, {b.left, board.height - b.bottom, b.right, board.height - b.top});
    }
  }
  return (3 * across + down) / (4 * all);
}

bool beside(const Rect& a, const Rect& b) {
  return a.top < b.bottom && b.top < a.bottom;
}
bool above(const Rect& a, const Rect& b) {
  return a.left < b.right && b.left < a.right;
}

// Each opening's nearest neighbour to the right and below; the least bar over the mean one.
double bar_likeness(const std::vector<Rect>& rects) {
  std::vector<double> bars;
  for (const Rect& a : rects) {
    double right = -1, below = -1;
    for (const Rect& b : rects) {
      if (beside(a, b) && b.left >= a.right) {
        const double bar = number(b.left - a.right);
        right = right < 0 ? bar : std::min(right, bar);
      }
      if (above(a, b) && b.top >= a.bottom) {
        const double bar = number(b.top - a.bottom);
        below = below < 0 ? bar : std::min(below, bar);
      }
    }
    if (right >= 0) bars.push_back(right);
    if (below >= 0) bars.push_back(below);
  }
  if (bars.empty()) return 1;
  double sum = 0, least = bars.front();
  for (const double bar : bars) {
    sum += bar;
    least = std::min(least, bar);
  }
  return sum <= 0 ? 0 : least / (sum / static_cast<double>(bars.size()));
}

}  // namespace

double score(const Criteria& c) {
  return weights.area * c.area + weights.borders * c.borders + weights.balance * c.balance +
         weights.alignment * c.alignment + weights.symmetry * c.symmetry + weights.bars * c.bars +
         weights.shape * c.shape;
}

double best_score(double openings, Length width, Length height, const Board& board) {
  return score({openings / (to_inches(board.width) * to_inches(board.height)),
                border_likeness(width, height, board), 1, 1, 1, 1, shape_of(board)});
}

std::vector<Rect> on_board(const Block& block, Length gap, std::size_t items, const Board& board) {
  std::vector<Rect> rects = places(block, gap, items);
  const Length x = half_rounded_down(board.width - block.width);
  const Length y = half_rounded_down(board.height - block.height);
  for (Rect& r : rects) r = {r.left + x, r.top + y, r.right + x, r.bottom + y};
  return rects;
}

Criteria judge(const Block& block, Length gap, std::size_t items, const Board& board) {
  const std::vector<Rect> rects = on_board(block, gap, items, board);
  double openings = 0;
  for (const Rect& rect : rects) openings += area_of(rect);
  return {openings / (number(board.width) * number(board.height)),
          border_likeness(block.width, block.height, board),
          balance_of(rects, block, board),
          alignment_of(rects),
          symmetry_of(rects, board),
          bar_likeness(rects),
          shape_of(board)};
}

}  // namespace mullion::suggest
