#include "render/template/corner_pieces.h"

#include <algorithm>

#include "engine/mat/rect.h"

namespace mullion {
namespace {

struct Grid {
  Length step, piece;
};

Grid grid_of(const Scale& scale) {
  if (scale.unit == Unit::inch) return {sixty_fourths(32), inches(2)};
  return {millimetres(10), millimetres(50)};
}

// The square around a mark whose edges lie on the grid that begins at the board's edges.
Rect square_around(const Point& mark, const Rect& board, const Grid& grid) {
  const Length back = half_rounded_down(grid.piece) - half_rounded_down(grid.step);
  const auto place = [&](Length at, Length edge) {
    const std::int64_t from_edge = (at - back - edge).ticks(), step = grid.step.ticks();
    return edge + Length::from_ticks(from_edge - (from_edge % step + step) % step);
  };
  const Length left = place(mark.x, board.left), top = place(mark.y, board.top);
  return {left, top, left + grid.piece, top + grid.piece};
}

bool is_outermost(const Point& point, const Rect& bounds) {
  return point.x == bounds.left || point.x == bounds.right || point.y == bounds.top ||
         point.y == bounds.bottom;
}

// Anticlockwise as seen from behind, beginning at the upper left.
std::vector<Point> marks_of(const Outline& outline) {
  const Rect bounds = bounding_box(outline);
  std::vector<Point> marks;
  for (std::size_t i = 0; i < outline.segments.size(); ++i) {
    const Segment& segment = outline.segments[i];
    const Segment& next = outline.segments[(i + 1) % outline.segments.size()];
    const bool within_curve = segment.curved && next.curved;
    if (!within_curve || is_outermost(segment.to, bounds)) marks.push_back(segment.to);
  }
  const auto from_corner = [&](const Point& point) {
    return point.x - bounds.left + point.y - bounds.top;
  };
  const auto first = std::min_element(
      marks.begin(), marks.end(),
      [&](const Point& a, const Point& b) { return from_corner(a) < from_corner(b); });
  std::rotate(marks.begin(), first, marks.end());
  return marks;
}

// Well inside, so that the lines are seen on both sides of the mark.
bool shows(const Rect& square, const Point& mark, const Grid& grid) {
  const Length room = Length::from_ticks(grid.piece.ticks() / 8);
  return mark.x - square.left >= room && square.right - mark.x >= room &&
         mark.y - square.top >= room && square.bottom - mark.y >= room;
}

// "a" to "z", then "aa".
std::string letters(std::size_t number) {
  const std::string last(1, static_cast<char>('a' + number % 26));
  return number < 26 ? last : letters(number / 26 - 1) + last;
}

std::string joined_numbers(const Window& window) {
  std::string numbers;
  for (const int number : window.openings)
    numbers += (numbers.empty() ? "" : "+") + std::to_string(number);
  return numbers;
}

}  // namespace

Rect located_from(const BoardView& view) {
  return mirrored(view.layers.front()->blank, view.width());
}

Length corner_piece_side(const Scale& scale) {
  return grid_of(scale).piece;
}

std::vector<CornerPiece> corner_pieces(const BoardView& view) {
  const Grid grid = grid_of(view.job->scale);
  const Rect board = located_from(view);
  std::vector<CornerPiece> pieces;
  const auto add = [&](const Window& window, const std::string& name, const std::string& of_layer) {
    const auto own = static_cast<std::ptrdiff_t>(pieces.size());
    for (const Point& mark : marks_of(mirrored(window.back_edge, view.width()))) {
      const std::size_t number = pieces.size() - static_cast<std::size_t>(own);
      const bool shown =
          std::any_of(pieces.begin() + own, pieces.end(),
                      [&](const CornerPiece& piece) { return shows(piece.rect, mark, grid); });
      if (shown) continue;
      pieces.push_back({name + letters(number) + of_layer, square_around(mark, board, grid)});
    }
  };
  for (const BoardCuts* layer : view.layers) {
    const std::string of_layer =
        view.layers.size() > 1 ? "/" + std::to_string(layer->layer->number) : "";
    for (const Window& window : layer->windows()) add(window, joined_numbers(window), of_layer);
  }
  if (const BoardCuts* grooves = view.grooves()) {
    for (std::size_t i = 0; i < grooves->panels.size(); ++i) {
      add(grooves->panels[i], "V" + std::to_string(i + 1), "");
    }
  }
  return pieces;
}

}  // namespace mullion
