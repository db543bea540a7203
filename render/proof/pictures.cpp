#include "render/proof/pictures.h"

#include <algorithm>

#include "render/proof/blocks.h"
#include "render/proof/tone.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

constexpr double wall_padding = 30, wall_foot = 14, card_gap = 18;

// One scale for all choices, no larger than life.
double common_scale(const Sheet& sheet, double width, double height) {
  double scale = 1;
  for (const Choice& choice : sheet.choices) {
    const Rect extent = seen_extent(*choice.piece.job, *choice.piece.mat);
    scale = std::min(
        {scale, width / paper::points(extent.width()), height / paper::points(extent.height())});
  }
  return scale;
}

View centred_in(const paper::Box& wall, const Piece& piece, double scale) {
  const Rect extent = seen_extent(*piece.job, *piece.mat);
  View view;
  view.scale = scale;
  view.origin = {
      wall.x + (wall.width - view.size(extent.width())) / 2 - view.size(extent.left),
      wall.y + (wall.height - wall_foot - view.size(extent.height())) / 2 - view.size(extent.top)};
  return view;
}

double column_width(const Sheet& sheet, double width) {
  return width / static_cast<double>(grid_for(sheet.choices.size()).columns);
}

Colour ink_on(const Colour& wall) {
  return contrast(wall, type::ink) >= contrast(wall, white) ? type::ink : white;
}

// A measure that is a round number in the unit that comes first and at most as long as `most`
// points.
void draw_size_reference(paper::Drawing& page, const Job& job, const Locale& locale, double scale,
                         const paper::Box& wall) {
  constexpr double most = 84;
  const bool metric = locale.first_scale(job.scale).unit != Unit::inch;
  Length length = metric ? millimetres(10) : inches(1);
  for (const std::int64_t n : {2, 5, 10, 15, 20, 30, 50, 100}) {
    const Length next = metric ? millimetres(10 * n)
                               : inches(n == 5    ? 4
                                        : n == 10 ? 6
                                        : n == 15 ? 12
                                        : n == 20 ? 18
                                                  : n);
    if (paper::points(next) * scale <= most) length = std::max(length, next);
  }
  const double width = paper::points(length) * scale;
  const double right = wall.x + wall.width - 12, y = wall.y + wall.height - 10;
  const paper::Pen pen{0.7, ink_on(job.wall), {}, 0.8};
  page.stroke(
      paper::polyline({{right - width, y - 3}, {right - width, y}, {right, y}, {right, y - 3}}),
      pen);
  paper::TextStyle style = type::right(type::body(7));
  style.colour = ink_on(job.wall);
  const Scale own{metric ? Unit::centimetre : Unit::inch,
                  metric ? millimetres(1) : sixty_fourths(4)};
  const Scale other{metric ? Unit::inch : Unit::centimetre,
                    metric ? sixty_fourths(4) : millimetres(1)};
  page.text(locale.length(length, own) + "  (" + locale.length(length, other) + ")",
            {right - width - 6, y}, style);
}

// The row's first choice, and the one after its last.
struct Range {
  std::size_t first, last;
};

Range choices_of(const Sheet& sheet, std::size_t row) {
  const std::size_t columns = grid_for(sheet.choices.size()).columns;
  return {row * columns, std::min(sheet.choices.size(), (row + 1) * columns)};
}

}  // namespace

Grid grid_for(std::size_t choices) {
  if (choices <= 3) return {choices, 1};
  return {(choices + 1) / 2, 2};
}

std::vector<double> card_heights(const Sheet& sheet, double width) {
  if (sheet.choices.size() < 2) return {};
  std::vector<double> heights;
  for (std::size_t row = 0; row < grid_for(sheet.choices.size()).rows; ++row) {
    paper::Drawing nowhere;
    heights.push_back(draw_cards(nowhere, sheet, row, {}, width));
  }
  return heights;
}

double scale_of_rows(const Sheet& sheet, double width, double row_height) {
  const std::size_t columns = grid_for(sheet.choices.size()).columns;
  return common_scale(sheet, column_width(sheet, width) - (columns > 1 ? 1 : 2) * wall_padding,
                      row_height - 2 * wall_padding - wall_foot);
}

Result<void> draw_row(paper::Drawing& page, paper::Format format, const Sheet& sheet,
                      std::size_t row, double scale, const paper::Box& box) {
  const double column = column_width(sheet, box.width);
  const Range range = choices_of(sheet, row);
  const auto wall = [&](std::size_t choice) {
    return paper::Box{box.x + column * static_cast<double>(choice - range.first), box.y, column,
                      box.height};
  };
  for (std::size_t i = range.first; i < range.last; ++i) {
    page.fill(paper::rectangle(wall(i)), {sheet.choices[i].piece.job->wall});
  }
  Problems problems;
  for (std::size_t i = range.first; i < range.last; ++i) {
    const Piece& piece = sheet.choices[i].piece;
    const auto drawn =
        draw_piece(page, format, piece, centred_in(wall(i), piece, scale), sheet.style);
    if (!drawn) problems.insert(problems.end(), drawn.error().begin(), drawn.error().end());
  }
  if (range.last == sheet.choices.size()) {
    draw_size_reference(page, *sheet.choices.back().piece.job, sheet.locale, scale,
                        wall(range.last - 1));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

double draw_cards(paper::Drawing& page, const Sheet& sheet, std::size_t row, paper::Spot corner,
                  double width) {
  const double column = column_width(sheet, width);
  const Range range = choices_of(sheet, row);
  double tallest = 0;
  for (std::size_t i = range.first; i < range.last; ++i) {
    const double x = corner.x + column * static_cast<double>(i - range.first);
    tallest = std::max(tallest, draw_card(page, sheet, i, {x, corner.y}, column - card_gap));
  }
  return tallest;
}

}  // namespace mullion::proof
