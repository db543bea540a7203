#include "render/proof/pages.h"

#include <algorithm>
#include <functional>

#include "render/proof/blocks.h"
#include "render/proof/pictures.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double running_head = 22;

// Where a drawing can be parted, not below `most`, so that no line of it is cut through.
double place_to_part(const paper::Drawing& drawing, double most) {
  const std::vector<paper::Box>& bounds = drawing.bounds();
  double best = 0;
  for (const paper::Box& box : bounds) {
    const double place = box.y + box.height + 0.5;
    if (place <= best || place > most) continue;
    const bool through = std::any_of(bounds.begin(), bounds.end(), [&](const paper::Box& other) {
      return other.y < place && place < other.y + other.height;
    });
    if (!through) best = place;
  }
  return best > 0 ? best : most;
}

class Pages {
 public:
  Pages(const Sheet& sheet, paper::Format format)
      : sheet_(sheet),
        format_(format),
        paper_(paper::usual_page(sheet.choices.front().piece.job->scale.unit, sheet.locale)),
        width_(paper::points(paper_.width) - 2 * margin),
        end_(paper::points(paper_.height) - margin - footer_height) {}

  Result<std::vector<paper::Page>> draw() {
    start_page();
    if (const auto drawn = draw_rows(); !drawn) return tl::unexpected(drawn.error());
    y_ += block_gap;
    paper::Drawing nowhere;
    if (draw_rest(nowhere, 0) <= end_ - top_of(1)) {
      block([&](paper::Drawing& page) { return draw_rest(page, 0); });
    } else {
      block([&](paper::Drawing& page) { return draw_legend(page, sheet_, {margin, 0}, width_); });
      y_ += block_gap;
      block([&](paper::Drawing& page) { return draw_approval(page, sheet_, {margin, 0}, width_); });
    }
    return finished();
  }

 private:
  double top_of(std::size_t page) const {
    return margin + (page == 0 ? heading_height : running_head);
  }

  // What is signed, and the line for it: on one page where one page holds both.
  double draw_rest(paper::Drawing& page, double y) const {
    const double legend = draw_legend(page, sheet_, {margin, y}, width_) + block_gap;
    return legend + draw_approval(page, sheet_, {margin, y + legend}, width_);
  }

  void start_page() {
    y_ = top_of(pages_.size());
    pages_.emplace_back();
  }

  // Drawn from y = 0 down: on this page, on the next one, or parted among several.
  void block(const std::function<double(paper::Drawing&)>& draw) {
    paper::Drawing drawing;
    const double height = draw(drawing);
    const double whole_page = end_ - top_of(1);
    if (height > end_ - y_ && (height <= whole_page || y_ + whole_page / 2 > end_)) start_page();
    double from = 0;
    while (height - from > end_ - y_) {
      const double to = place_to_part(drawing, from + end_ - y_);
      place_part(drawing, from, to);
      from = to;
      start_page();
    }
    place_part(drawing, from, height);
    y_ += height - from;
  }

  void place_part(const paper::Drawing& drawing, double from, double to) {
    if (drawing.empty()) return;
    paper::Drawing moved;
    moved.place(drawing, paper::shifted(0, y_ - from));
    // Some letters reach a little above the line they stand in.
    constexpr double letters = 0.4;
    pages_.back().clipped(std::move(moved),
                          paper::Box{0, y_ - letters, paper::points(paper_.width), to - from});
  }

  Result<void> draw_rows() {
    const std::vector<double> cards = card_heights(sheet_, width_);
    const Grid grid = grid_for(sheet_.choices.size());
    const RowHeights heights = row_heights(cards, grid.rows);
    const double scale = scale_of_rows(sheet_, width_, heights.row);
    for (std::size_t row = 0; row < grid.rows; ++row) {
      if (row > 0 && !heights.on_one_page) start_page();
      const auto drawn =
          draw_row(pages_.back(), format_, sheet_, row, scale, {margin, y_, width_, heights.row});
      if (!drawn) return drawn;
      scale_ = scale;
      y_ += heights.row;
      if (cards.empty()) continue;
      y_ += block_gap / 2;
      block([&](paper::Drawing& page) {
        return draw_cards(page, sheet_, row, {margin, 0}, width_);
      });
    }
    return {};
  }

  struct RowHeights {
    double row = 0;
    bool on_one_page = true;
  };

  RowHeights row_heights(const std::vector<double>& cards, std::size_t rows) const {
    const double room = end_ - top_of(0), least = rows > 1 ? least_row : least_wall;
    double below = 0, tallest = 0;
    for (const double card : cards) {
      below += block_gap / 2 + card;
      tallest = std::max(tallest, block_gap / 2 + card);
    }
    const double row = (room - below) / static_cast<double>(rows);
    if (row >= least) return {row};
    const double alone = std::max(least, room - tallest);
    if (rows == 1) return {alone};
    // The last row leaves room for what is signed where it may.
    paper::Drawing nowhere;
    const double with_rest =
        end_ - top_of(1) - block_gap / 2 - cards.back() - block_gap - draw_rest(nowhere, 0);
    return {with_rest >= least ? std::min(alone, with_rest) : alone, false};
  }

  Result<std::vector<paper::Page>> finished() {
    const Job& job = *sheet_.choices.front().piece.job;
    const Locale& locale = sheet_.locale;
    std::vector<paper::Page> out;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
      paper::Drawing& page = pages_[i];
      const std::string number = locale.say("Proof, page %1 of %2", i + 1, pages_.size());
      if (i == 0) {
        draw_heading(page, format_, sheet_, {margin, margin, width_, heading_height});
      } else {
        page.text(paper::fitted(words::title_of(job), width_ / 2, type::strong(10)),
                  {margin, margin + 5}, type::strong(10));
      }
      if (i > 0) page.text(number, {margin + width_, margin + 5}, type::right(type::faint()));
      draw_footer(page, sheet_, scale_, {margin, end_, width_, footer_height});
      out.push_back({paper_, number, std::move(page)});
    }
    return out;
  }

  const Sheet& sheet_;
  const paper::Format format_;
  const paper::PageSize paper_;
  const double width_, end_;
  double y_ = 0, scale_ = 1;
  std::vector<paper::Drawing> pages_;
};

}  // namespace

Result<std::vector<paper::Page>> draw_pages(const Sheet& sheet, paper::Format format) {
  return Pages(sheet, format).draw();
}

}  // namespace mullion::proof
