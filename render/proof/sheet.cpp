#include "render/proof/sheet.h"

#include <algorithm>
#include <cmath>

#include "render/paper/document.h"
#include "render/proof/blocks.h"
#include "render/proof/pages.h"
#include "render/proof/pictures.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

// Of an image, or of paper where one page of it will do.
struct OnePage {
  paper::PageSize size;
  double row_height = 0;
  std::vector<double> cards;  // heights, by row
  bool grows = false;         // beyond the paper
};

OnePage one_page(const Sheet& sheet) {
  OnePage out;
  out.size = paper::usual_page(sheet.choices.front().piece.job->scale.unit, sheet.locale);
  const double width = paper::points(out.size.width) - 2 * margin;
  out.cards = card_heights(sheet, width);
  paper::Drawing nowhere;
  double others = 2 * margin + heading_height + footer_height + 2 * block_gap +
                  draw_legend(nowhere, sheet, {}, width) + draw_approval(nowhere, sheet, {}, width);
  for (const double card : out.cards) others += block_gap / 2 + card;
  const auto rows = static_cast<double>(grid_for(sheet.choices.size()).rows);
  const double least = rows > 1 ? least_row : least_wall;
  out.row_height = (paper::points(out.size.height) - others) / rows;
  if (out.row_height >= (rows > 1 ? smallest_row : smallest_wall)) return out;
  out.grows = true;
  const double grow = (least - out.row_height) * rows;
  out.size.height += millimetres(static_cast<std::int64_t>(std::ceil(grow * 25.4 / 72)));
  out.row_height = (paper::points(out.size.height) - others) / rows;
  return out;
}

Result<paper::Page> draw_one_page(const Sheet& sheet, paper::Format format, const OnePage& layout) {
  paper::Drawing page;
  const double width = paper::points(layout.size.width) - 2 * margin;
  draw_heading(page, format, sheet, {margin, margin, width, heading_height});
  const double scale = scale_of_rows(sheet, width, layout.row_height);
  double y = margin + heading_height;
  for (std::size_t row = 0; row < grid_for(sheet.choices.size()).rows; ++row) {
    const paper::Box walls{margin, y, width, layout.row_height};
    if (const auto drawn = draw_row(page, format, sheet, row, scale, walls); !drawn) {
      return tl::unexpected(drawn.error());
    }
    y += layout.row_height;
    if (layout.cards.empty()) continue;
    y += block_gap / 2;
    draw_cards(page, sheet, row, {margin, y}, width);
    y += layout.cards[row];
  }
  y += block_gap;
  y += draw_legend(page, sheet, {margin, y}, width) + block_gap;
  y += draw_approval(page, sheet, {margin, y}, width);
  draw_footer(page, sheet, scale, {margin, y, width, footer_height});
  return paper::Page{layout.size, sheet.locale.say("Proof"), std::move(page)};
}

Result<std::vector<paper::Page>> pages_of(const Sheet& sheet, paper::Format format) {
  const OnePage layout = one_page(sheet);
  if (layout.grows && format == paper::Format::pdf) return draw_pages(sheet, format);
  Result<paper::Page> page = draw_one_page(sheet, format, layout);
  if (!page) return tl::unexpected(page.error());
  std::vector<paper::Page> pages;
  pages.push_back(std::move(*page));
  return pages;
}

}  // namespace

std::string letter_of(std::size_t choice) {
  return std::string(1, static_cast<char>('A' + choice));
}

Result<std::string> render_sheet(const Sheet& sheet, paper::Format format, double png_dpi) {
  const Result<std::vector<paper::Page>> pages = pages_of(sheet, format);
  if (!pages) return tl::unexpected(pages.error());
  const Job& job = *sheet.choices.front().piece.job;
  return paper::write(format, *pages,
                      {sheet.locale.say(words::proof_of, words::title_of(job)), job.date, png_dpi});
}

}  // namespace mullion::proof
