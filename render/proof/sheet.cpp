#include "render/proof/sheet.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "render/paper/document.h"
#include "render/proof/blocks.h"
#include "render/proof/tone.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double margin = 40, block_gap = 16, wall_padding = 30, wall_foot = 14, card_gap = 18;
constexpr double least_wall = 260, least_row = 190;

struct Grid {
  std::size_t columns, rows;
};

Grid grid_for(std::size_t choices) {
  if (choices <= 3) return {choices, 1};
  return {(choices + 1) / 2, 2};
}

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

// The height that a block will have: it is drawn where nobody sees it.
double height_of(const std::function<double(paper::Drawing&)>& block) {
  paper::Drawing nowhere;
  return block(nowhere);
}

// The height of the cards of each row of choices; empty for a single choice.
std::vector<double> card_heights(const Sheet& sheet, double width) {
  if (sheet.choices.size() < 2) return {};
  const Grid grid = grid_for(sheet.choices.size());
  std::vector<double> heights(grid.rows);
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    double& tallest = heights[i / grid.columns];
    tallest =
        std::max(tallest, height_of([&](paper::Drawing& page) {
                   return draw_card(page, sheet, i, {}, column_width(sheet, width) - card_gap);
                 }));
  }
  return heights;
}

double blocks_height(const Sheet& sheet, double width) {
  return block_gap + height_of([&](paper::Drawing& page) {
           return draw_legend(page, sheet, {}, width) + block_gap +
                  draw_approval(page, sheet, {}, width);
         }) +
         footer_height;
}

void place(const Sheet& sheet, Composition& out, double width, double row_height,
           const std::vector<double>& cards) {
  const Grid grid = grid_for(sheet.choices.size());
  const double column = column_width(sheet, width);
  const double scale = common_scale(sheet, column - (grid.columns > 1 ? 1 : 2) * wall_padding,
                                    row_height - 2 * wall_padding - wall_foot);
  double y = margin + heading_height;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const std::size_t row = i / grid.columns;
    const double x = margin + column * static_cast<double>(i % grid.columns);
    const paper::Box wall{x, y, column, row_height};
    out.walls.push_back(wall);
    out.views.push_back(centred_in(wall, sheet.choices[i].piece, scale));
    const bool last = i + 1 == sheet.choices.size() || (i + 1) % grid.columns == 0;
    const double card = cards.empty() ? 0 : cards[row];
    if (!cards.empty()) {
      out.cards.push_back({x, y + row_height + block_gap / 2, column - card_gap, card});
    }
    if (last) y += row_height + (cards.empty() ? 0 : block_gap / 2 + card);
  }
  out.below = y;
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

Result<void> draw_choices(paper::Drawing& page, paper::Format format, const Sheet& sheet,
                          const Composition& composition) {
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    page.fill(paper::rectangle(composition.walls[i]), {sheet.choices[i].piece.job->wall});
  }
  Problems problems;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const auto drawn =
        draw_piece(page, format, sheet.choices[i].piece, composition.views[i], sheet.style);
    if (!drawn) problems.insert(problems.end(), drawn.error().begin(), drawn.error().end());
  }
  draw_size_reference(page, *sheet.choices.back().piece.job, sheet.locale,
                      composition.views.back().scale, composition.walls.back());
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

}  // namespace

std::string letter_of(std::size_t choice) {
  return std::string(1, static_cast<char>('A' + choice));
}

Composition compose(const Sheet& sheet) {
  Composition out;
  out.page = paper::usual_page(sheet.choices.front().piece.job->scale.unit, sheet.locale);
  const double width = paper::points(out.page.width) - 2 * margin;
  const std::vector<double> cards = card_heights(sheet, width);
  double others = 2 * margin + heading_height + blocks_height(sheet, width);
  for (const double card : cards) others += block_gap / 2 + card;
  const auto rows = static_cast<double>(grid_for(sheet.choices.size()).rows);
  const double least = rows > 1 ? least_row : least_wall;
  double row_height = (paper::points(out.page.height) - others) / rows;
  if (row_height < least) {
    const double grow = (least - row_height) * rows;
    out.page.height += millimetres(static_cast<std::int64_t>(std::ceil(grow * 25.4 / 72)));
    row_height = (paper::points(out.page.height) - others) / rows;
  }
  place(sheet, out, width, row_height, cards);
  return out;
}

Result<std::string> render_sheet(const Sheet& sheet, paper::Format format, double png_dpi) {
  const Composition composition = compose(sheet);
  const Job& job = *sheet.choices.front().piece.job;
  paper::Drawing page;
  const double width = paper::points(composition.page.width) - 2 * margin;
  draw_heading(page, format, sheet, {margin, margin, width, heading_height});
  if (const auto drawn = draw_choices(page, format, sheet, composition); !drawn) {
    return tl::unexpected(drawn.error());
  }
  for (std::size_t i = 0; i < composition.cards.size(); ++i) {
    const paper::Box& card = composition.cards[i];
    draw_card(page, sheet, i, {card.x, card.y}, card.width);
  }
  double y = composition.below + block_gap;
  y += draw_legend(page, sheet, {margin, y}, width) + block_gap;
  y += draw_approval(page, sheet, {margin, y}, width);
  draw_footer(page, sheet, composition.views.front().scale, {margin, y, width, footer_height});
  return paper::write(format, {{composition.page, sheet.locale.say("Proof"), std::move(page)}},
                      {sheet.locale.say(words::proof_of, words::title_of(job)), job.date, png_dpi});
}

}  // namespace mullion::proof
