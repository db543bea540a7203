#include "engine/suggest/criteria.h"

#include <algorithm>
#include <cmath>

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

double balance_of(const std::vector<Rect>& rects, Length block_width, Length block_height,
                  const Board& board) {
  double mass = 0, x = 0, y = 0;
  for (const Rect& r : rects) {
    const double m = area_of(r);
    mass += m;
    x += m * number(r.left + r.right) / 2;
    y += m * number(r.top + r.bottom) / 2;
  }
  const double width = number(board.width), height = number(board.height);
  const double rise =
      (height - number(block_height)) * (0.5 - (width + number(block_width)) / (4 * width));
  const double away = std::hypot(x / mass - width / 2, y / mass - (height / 2 - rise));
  return std::max(0.0, 1 - 4 * away / std::hypot(width, height));
}

std::size_t distinct(std::vector<Length>& lines) {
  std::sort(lines.begin(), lines.end());
  return static_cast<std::size_t>(std::unique(lines.begin(), lines.end()) - lines.begin());
}

// 1 where all openings share two edges, 0 where every edge stands alone.
double alignment_of(const std::vector<Rect>& rects) {
  if (rects.size() < 2) return 1;
  std::vector<Length> across, down;
  across.reserve(2 * rects.size());
  down.reserve(2 * rects.size());
  for (const Rect& r : rects) {
    across.insert(across.end(), {r.left, r.right});
    down.insert(down.end(), {r.top, r.bottom});
  }
  const double most = 4.0 * static_cast<double>(rects.size());
  return (most - static_cast<double>(distinct(across) + distinct(down))) / (most - 4);
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
  double sum = 0, least = 0;
  int bars = 0;
  const auto add = [&](double bar) {
    if (bar < 0) return;
    least = bars == 0 ? bar : std::min(least, bar);
    sum += bar;
    ++bars;
  };
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
    add(right);
    add(below);
  }
  if (bars == 0) return 1;
  return sum <= 0 ? 0 : least / (sum / bars);
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

void centre(std::vector<Rect>& openings, Length width, Length height, const Board& board) {
  const Length x = half_rounded_down(board.width - width);
  const Length y = half_rounded_down(board.height - height);
  for (Rect& r : openings) r = {r.left + x, r.top + y, r.right + x, r.bottom + y};
}

std::vector<Rect> on_board(const Block& block, Length gap, std::size_t items, const Board& board) {
  std::vector<Rect> rects = places(block, gap, items);
  centre(rects, block.width, block.height, board);
  return rects;
}

Criteria judge(const Block& block, Length gap, std::size_t items, const Board& board) {
  const std::vector<Rect> rects = on_board(block, gap, items, board);
  return *judge(rects, block.width, block.height, board, 0);
}

std::optional<Criteria> judge(const std::vector<Rect>& openings, Length width, Length height,
                              const Board& board, double least) {
  double area = 0;
  for (const Rect& rect : openings) area += area_of(rect);
  // What is not yet known is taken to be perfect; the quickest to find out comes first.
  Criteria out{area / (number(board.width) * number(board.height)),
               border_likeness(width, height, board),
               1,
               1,
               1,
               1,
               shape_of(board)};
  constexpr double rounding = 1e-9;
  const auto falls_short = [&] { return score(out) + rounding < least; };
  if (falls_short()) return std::nullopt;
  out.balance = balance_of(openings, width, height, board);
  if (falls_short()) return std::nullopt;
  out.alignment = alignment_of(openings);
  if (falls_short()) return std::nullopt;
  out.bars = bar_likeness(openings);
  if (falls_short()) return std::nullopt;
  out.symmetry = symmetry_of(openings, board);
  return out;
}

}  // namespace mullion::suggest
