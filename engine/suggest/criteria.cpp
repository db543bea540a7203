#include "engine/suggest/criteria.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace mullion::suggest {
namespace {

double area_of(const Rect& r) {
  return number(r.width()) * number(r.height());
}

double border_likeness(Length width, Length height, const Board& board) {
  const double across = number(board.width - width);
  const double down = number(board.height - height - board.bottom_extra);
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
  const double across = x / mass - width / 2, down = y / mass - (height / 2 - rise);
  return std::max(
      0.0, 1 - 4 * std::sqrt((across * across + down * down) / (width * width + height * height)));
}

// Edges this close are in one line: they differ by halves of ticks alone, which centring rounds.
constexpr std::int64_t rounding_of_edges = 20;

bool in_one_line(std::int64_t a, std::int64_t b) {
  return static_cast<std::uint64_t>(a - b + rounding_of_edges) <= 2 * rounding_of_edges;
}

// How many lines the edges of one direction lie in.
std::size_t lines(const std::vector<Rect>& rects, Length Rect::*low, Length Rect::*high) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < rects.size(); ++i) {
    const std::int64_t a = (rects[i].*low).ticks(), b = (rects[i].*high).ticks();
    unsigned a_is_old = 0, b_is_old = 0;  // no branch: this is most of the work of a large search
    for (std::size_t j = 0; j < i; ++j) {
      const std::int64_t c = (rects[j].*low).ticks(), d = (rects[j].*high).ticks();
      a_is_old |= unsigned{in_one_line(a, c)} | unsigned{in_one_line(a, d)};
      b_is_old |= unsigned{in_one_line(b, c)} | unsigned{in_one_line(b, d)};
    }
    count += 2 - a_is_old - b_is_old;
  }
  return count;
}

// 1 where all openings share two edges, 0 where every edge stands alone.
double alignment_of(const std::vector<Rect>& rects) {
  if (rects.size() < 2) return 1;
  const std::size_t found =
      lines(rects, &Rect::left, &Rect::right) + lines(rects, &Rect::top, &Rect::bottom);
  const double most = 4.0 * static_cast<double>(rects.size());
  return (most - static_cast<double>(found)) / (most - 4);
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

constexpr std::int64_t no_bar = std::numeric_limits<std::int64_t>::max();

// The bars from each opening to its nearest neighbours on all four sides, in ticks.
struct Nearest {
  std::int64_t left = no_bar, above = no_bar, right = no_bar, below = no_bar;
};

struct Bars {
  std::vector<Nearest> nearest;
  double sum = 0, least = 0;  // each bar counted from both its sides
  int count = 0;
};

Bars bars_of(const std::vector<Rect>& rects) {
  Bars out{std::vector<Nearest>(rects.size())};
  std::vector<Nearest>& nearest = out.nearest;
  const auto note = [](std::int64_t& bar, std::int64_t& from_there, Length width) {
    bar = std::min(bar, width.ticks());
    from_there = std::min(from_there, width.ticks());
  };
  for (std::size_t i = 0; i < rects.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Rect &a = rects[i], &b = rects[j];
      if (beside(a, b)) {
        if (b.left >= a.right) note(nearest[i].right, nearest[j].left, b.left - a.right);
        if (a.left >= b.right) note(nearest[j].right, nearest[i].left, a.left - b.right);
      } else if (above(a, b)) {
        if (b.top >= a.bottom) note(nearest[i].below, nearest[j].above, b.top - a.bottom);
        if (a.top >= b.bottom) note(nearest[j].below, nearest[i].above, a.top - b.bottom);
      }
    }
  }
  for (const Nearest& one : nearest) {
    for (const std::int64_t bar : {one.left, one.above, one.right, one.below}) {
      if (bar == no_bar) continue;
      const auto width = static_cast<double>(bar);
      out.least = out.count == 0 ? width : std::min(out.least, width);
      out.sum += width;
      ++out.count;
    }
  }
  return out;
}

// The least bar over their mean.
double bar_likeness(const Bars& bars) {
  if (bars.count == 0) return 1;
  return bars.sum <= 0 ? 0 : bars.least / (bars.sum / bars.count);
}

// The mean border beside the mean bar.
double proportion_of(const Bars& bars, Length width, Length height, const Board& board) {
  constexpr double wide_enough = 2.5, too_wide = 6;
  if (bars.count == 0 || bars.sum <= 0) return 1;
  const double border =
      number(board.width - width + board.height - height - board.bottom_extra) / 4;
  const double ratio = border * bars.count / bars.sum;
  if (ratio < 1) return std::max(ratio, 0.0);
  return std::clamp((too_wide - ratio) / (too_wide - wide_enough), 0.0, 1.0);
}

// Of all edges with no opening beyond them, by their length, those that lie on the block's sides.
double flush_of(const std::vector<Rect>& rects, const std::vector<Nearest>& nearest) {
  Rect block = rects.front();
  for (const Rect& r : rects) {
    block = {std::min(block.left, r.left), std::min(block.top, r.top),
             std::max(block.right, r.right), std::max(block.bottom, r.bottom)};
  }
  double outer = 0, flush = 0;
  const auto note = [&](std::int64_t bar, Length edge, Length side, Length length) {
    if (bar != no_bar) return;
    outer += number(length);
    if (in_one_line(edge.ticks(), side.ticks())) flush += number(length);
  };
  for (std::size_t i = 0; i < rects.size(); ++i) {
    const Rect& r = rects[i];
    note(nearest[i].left, r.left, block.left, r.height());
    note(nearest[i].right, r.right, block.right, r.height());
    note(nearest[i].above, r.top, block.top, r.width());
    note(nearest[i].below, r.bottom, block.bottom, r.width());
  }
  return outer > 0 ? flush / outer : 1;
}

bool is_staggered_by_moving(const Block& block) {
  return std::any_of(block.parts.begin(), block.parts.end(),
                     [](const Block& part) { return part.moved != Length(); });
}

double distance(const Rect& a, const Rect& b) {
  const double across = std::max({number(b.left - a.right), number(a.left - b.right), 0.0});
  const double down = std::max({number(b.top - a.bottom), number(a.top - b.bottom), 0.0});
  return std::max(across, down);
}

// Its openings lie in line on the circle, which is its outer line too; its bars are those from one
// to the next. What is open in its middle is missed in `compact`.
void judge_as_ring(Criteria& criteria, const Block& block, const std::vector<Rect>& rects) {
  criteria.alignment = criteria.flush = 1;
  const std::size_t count = block.parts.size() - (block.has_centre ? 1 : 0);
  double sum = 0, least = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const auto at = [&](std::size_t slot) {
      return rects[static_cast<std::size_t>(block.parts[slot % count].item)];
    };
    const double bar = distance(at(i), at(i + 1));
    sum += bar;
    least = i == 0 ? bar : std::min(least, bar);
  }
  // The centre's nearest neighbour is as near as these where the ring is no wider than it must be.
  double count_of_bars = static_cast<double>(count);
  if (block.has_centre) {
    double nearest = 0;
    for (std::size_t i = 0; i < count; ++i) {
      const auto part = static_cast<std::size_t>(block.parts[i].item);
      const double bar =
          distance(rects[part], rects[static_cast<std::size_t>(block.parts.back().item)]);
      nearest = i == 0 ? bar : std::min(nearest, bar);
    }
    least = std::min(least, nearest);
    sum += nearest;
    ++count_of_bars;
  }
  criteria.bars = sum > 0 ? least / (sum / count_of_bars) : 0;
}

}  // namespace

const std::array<Criterion, 10>& criteria_table() {
  static constexpr std::array<Criterion, 10> table{{
      {"area", &Criteria::area, "the openings fill the board"},
      {"borders", &Criteria::borders, "the borders are alike on all sides"},
      {"balance", &Criteria::balance,
       "the openings' centre of mass lies in the optical centre, a little above the middle"},
      {"alignment", &Criteria::alignment, "edges of openings lie in line with others"},
      {"symmetry", &Criteria::symmetry,
       "one half mirrors the other; left and right count for 3/4, above and below for 1/4"},
      {"bars", &Criteria::bars, "the bars between neighbours are alike"},
      {"flush", &Criteria::flush, "the outer openings end on the four sides of one rectangle"},
      {"compact", &Criteria::compact, "the openings fill the rectangle around them"},
      {"proportion", &Criteria::proportion, "the borders are wider than the bars, but not much"},
      {"shape", &Criteria::shape, "the board is no longer than 3:2; nothing from 3:1"},
  }};
  return table;
}

double score(const Criteria& criteria) {
  double sum = 0;
  for (const Criterion& one : criteria_table()) sum += weights.*one.figure * (criteria.*one.figure);
  return sum;
}

double best_score(double openings, Length width, Length height, const Board& board) {
  return score({openings / (to_inches(board.width) * to_inches(board.height)),
                border_likeness(width, height, board), 1, 1, 1, 1, 1,
                openings / (to_inches(width) * to_inches(height)), 1, shape_of(board)});
}

void centre(std::vector<Rect>& openings, Length width, Length height, const Board& board) {
  const Length x = half_rounded_down(board.width - width);
  const Length y = half_rounded_down(board.height - height - board.bottom_extra);
  for (Rect& r : openings) r = {r.left + x, r.top + y, r.right + x, r.bottom + y};
}

std::vector<Rect> on_board(const Block& block, Length gap, std::size_t items, const Board& board) {
  std::vector<Rect> rects = places(block, gap, items);
  centre(rects, block.width, block.height, board);
  return rects;
}

Criteria judge(const Block& block, Length gap, std::size_t items, const Board& board) {
  const std::vector<Rect> rects = on_board(block, gap, items, board);
  Criteria out = *judge(rects, block.width, block.height, board, 0);
  if (block.kind == Block::Kind::ring) judge_as_ring(out, block, rects);
  if (is_staggered_by_moving(block)) out.alignment = 1;
  return out;
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
               1,
               area / (number(width) * number(height)),
               1,
               shape_of(board)};
  constexpr double rounding = 1e-9;
  const auto falls_short = [&] { return score(out) + rounding < least; };
  if (falls_short()) return std::nullopt;
  out.balance = balance_of(openings, width, height, board);
  if (falls_short()) return std::nullopt;
  const Bars bars = bars_of(openings);
  out.flush = flush_of(openings, bars.nearest);
  out.bars = bar_likeness(bars);
  out.proportion = proportion_of(bars, width, height, board);
  if (falls_short()) return std::nullopt;
  out.alignment = alignment_of(openings);
  if (falls_short()) return std::nullopt;
  out.symmetry = symmetry_of(openings, board);
  return out;
}

}  // namespace mullion::suggest
