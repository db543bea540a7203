#include "render/proof/sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/proof/blocks.h"
#include "render/proof/tone.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

constexpr double margin = 40, block_gap = 16, wall_padding = 30, wall_foot = 14, letter_strip = 22;
constexpr double least_wall = 260;
constexpr paper::PageSize letter_paper{sixty_fourths(17 * 32), inches(11)};
constexpr paper::PageSize a4_paper{millimetres(210), millimetres(297)};

double blocks_height(const Sheet& sheet) {
  return heading_height + captions_height(sheet) + block_gap + legend_height(sheet) + block_gap +
         prices_height(sheet) + approval_height + footer_height;
}

struct Grid {
  std::size_t columns, rows;
};

Grid grid_for(std::size_t choices) {
  if (choices <= 3) return {choices, 1};
  return {(choices + 1) / 2, 2};
}

// One scale for all choices, no larger than life.
double common_scale(const Sheet& sheet, double cell_width, double cell_height) {
  double scale = 1;
  for (const Choice& choice : sheet.choices) {
    const Rect extent = seen_extent(*choice.piece.job, *choice.piece.mat);
    scale = std::min({scale, cell_width / paper::points(extent.width()),
                      cell_height / paper::points(extent.height())});
  }
  return scale;
}

std::vector<View> place(const Sheet& sheet, const paper::Box& wall) {
  const std::size_t count = sheet.choices.size();
  const Grid grid = grid_for(count);
  const double strip = count > 1 ? letter_strip : 0;
  const double cell_width = (wall.width - wall_padding) / static_cast<double>(grid.columns);
  const double cell_height =
      (wall.height - wall_padding - wall_foot) / static_cast<double>(grid.rows);
  const double scale =
      common_scale(sheet, cell_width - wall_padding, cell_height - wall_padding - strip);
  std::vector<View> views;
  for (std::size_t i = 0; i < count; ++i) {
    const Choice& choice = sheet.choices[i];
    const Rect extent = seen_extent(*choice.piece.job, *choice.piece.mat);
    const double x = wall.x + wall_padding / 2 + cell_width * static_cast<double>(i % grid.columns);
    const double y =
        wall.y + wall_padding / 2 + cell_height * static_cast<double>(i / grid.columns);
    View view;
    view.scale = scale;
    view.origin = {
        x + (cell_width - view.size(extent.width())) / 2 - view.size(extent.left),
        y + (cell_height - strip - view.size(extent.height())) / 2 - view.size(extent.top)};
    views.push_back(view);
  }
  return views;
}

Colour ink_on(const Colour& wall) {
  return contrast(wall, type::ink) >= contrast(wall, white) ? type::ink : white;
}

// A measure that is a round number in the job's unit and at most as long as `most` points.
void draw_size_reference(paper::Canvas& canvas, const Job& job, double scale,
                         const paper::Box& wall) {
  constexpr double most = 84;
  const bool metric = job.scale.unit != Unit::inch;
  Length length = metric ? millimetres(10) : inches(1);
  for (const int n : {2, 5, 10, 15, 20, 30, 50, 100}) {
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
  canvas.polyline({{right - width, y - 3}, {right - width, y}, {right, y}, {right, y - 3}}, pen);
  paper::TextStyle style = type::right(type::body(7));
  style.colour = ink_on(job.wall);
  const Scale own{job.scale.unit == Unit::inch ? Unit::inch : Unit::centimetre,
                  metric ? millimetres(1) : sixty_fourths(4)};
  const Scale other{metric ? Unit::inch : Unit::centimetre,
                    metric ? sixty_fourths(4) : millimetres(1)};
  canvas.text(format_length(length, own).text + "  (" + format_length(length, other).text + ")",
              {right - width - 6, y}, style);
}

void draw_letters(paper::Canvas& canvas, const Sheet& sheet, const Composition& composition) {
  if (sheet.choices.size() < 2) return;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const Piece& piece = sheet.choices[i].piece;
    const paper::Box box = composition.views[i].box(seen_extent(*piece.job, *piece.mat));
    paper::TextStyle style = type::centred(type::strong(13));
    style.colour = ink_on(sheet.choices.front().piece.job->wall);
    canvas.text(letter_of(i), {box.x + box.width / 2, box.y + box.height + 22}, style);
  }
}

Result<void> draw_wall(paper::Canvas& canvas, paper::Format format, const Sheet& sheet,
                       const Composition& composition) {
  const Job& job = *sheet.choices.front().piece.job;
  canvas.fill(composition.wall, {job.wall});
  Problems problems;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const auto drawn =
        draw_piece(canvas, format, sheet.choices[i].piece, composition.views[i], sheet.style);
    if (!drawn) problems.insert(problems.end(), drawn.error().begin(), drawn.error().end());
  }
  draw_letters(canvas, sheet, composition);
  draw_size_reference(canvas, job, composition.views.front().scale, composition.wall);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

}  // namespace

std::string letter_of(std::size_t choice) {
  return std::string(1, static_cast<char>('A' + choice));
}

Composition compose(const Sheet& sheet) {
  Composition out;
  out.page = sheet.choices.front().piece.job->scale.unit == Unit::inch ? letter_paper : a4_paper;
  const double blocks = blocks_height(sheet) + 2 * margin;
  double wall_height = paper::points(out.page.height) - blocks;
  if (wall_height < least_wall) {
    const double grow = least_wall - wall_height;
    out.page.height += millimetres(static_cast<std::int64_t>(std::ceil(grow * 25.4 / 72)));
    wall_height = paper::points(out.page.height) - blocks;
  }
  out.wall = {margin, margin + heading_height, paper::points(out.page.width) - 2 * margin,
              wall_height};
  out.views = place(sheet, out.wall);
  return out;
}

Result<std::string> render_sheet(const Sheet& sheet, paper::Format format, double png_dpi) {
  const Composition composition = compose(sheet);
  const Job& job = *sheet.choices.front().piece.job;
  const std::string title = job.title.empty() ? job.reference : job.title;
  paper::Document document(format, {title + ", proof", job.date, png_dpi});
  paper::Canvas& canvas = document.add_page(composition.page, "Proof");
  const paper::Box& wall = composition.wall;
  const auto block = [&](double y, double height) {
    return paper::Box{wall.x, y, wall.width, height};
  };
  draw_heading(canvas, format, sheet, block(margin, heading_height));
  if (const auto drawn = draw_wall(canvas, format, sheet, composition); !drawn) {
    return tl::unexpected(drawn.error());
  }
  double y = wall.y + wall.height + block_gap;
  draw_captions(canvas, sheet, block(y, captions_height(sheet)));
  y += captions_height(sheet);
  draw_legend(canvas, sheet, block(y + 4, legend_height(sheet)));
  y += legend_height(sheet) + block_gap;
  draw_prices(canvas, sheet, block(y, prices_height(sheet)));
  y += prices_height(sheet);
  draw_approval(canvas, sheet, block(y, approval_height));
  draw_footer(canvas, sheet, composition.views.front().scale,
              block(y + approval_height, footer_height));
  return document.finish();
}

}  // namespace mullion::proof
