#include "render/cutsheet/flow.h"

#include <algorithm>

#include "render/cutsheet/headings.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

constexpr double margin = 30;
constexpr double foot = 14;
constexpr int most_columns = 3;
constexpr double least_heading = 0.8;  // a longer one is set in two lines
constexpr Colour black{0, 0, 0};

double indent_of(const paper::TextStyle& style) {
  return style.size * 1.7;
}

int columns_for(const std::vector<std::string>& texts, double width,
                const paper::TextStyle& style) {
  double widest = 0;
  for (const std::string& text : texts) {
    widest = std::max(widest, paper::text_width(text, style) + indent_of(style) + style.size);
  }
  const int columns = widest > 0 ? static_cast<int>(width / widest) : 1;
  return std::clamp(columns, 1, std::min(most_columns, static_cast<int>(texts.size())));
}

}  // namespace

void tick_box(paper::Drawing& page, paper::Spot corner, double size) {
  page.stroke(paper::rectangle({corner.x, corner.y, size, size}), {.width = 1, .dashes = {}});
}

Flow::Flow(paper::PageSize page, std::string title, std::vector<paper::Page>* document,
           const Locale& locale)
    : page_(page), title_(std::move(title)), document_(document), locale_(locale) {
  next_page();
}

double Flow::width() const {
  return paper::points(page_.width) - 2 * margin;
}

double Flow::page_height() const {
  return paper::points(page_.height) - 2 * margin - foot / 2;
}

void Flow::next_page() {
  ++pages_;
  y_ = margin;
  if (document_ == nullptr) return;
  document_->push_back({page_, pages_ == 1 ? title_ : locale_.say("Page %1", pages_), {}});
  drawing_ = &document_->back().drawing;
  const double bottom = paper::points(page_.height) - margin + foot;
  drawing_->text(paper::fitted(title_, width() - 80, {.size = 8}), {margin, bottom}, {.size = 8});
  drawing_->text(locale_.say("page %1", pages_), {margin + width(), bottom},
                 {.size = 8, .anchor = paper::Anchor::right});
}

void Flow::keep(double height) {
  if (y_ > margin && y_ + height > margin + page_height()) next_page();
}

void Flow::block(double height, const Draw& draw) {
  runs_over_ = runs_over_ || height > page_height();
  keep(height);
  if (drawing_ != nullptr) draw(*drawing_, {margin, y_});
  y_ += height;
}

void Flow::text(const std::string& text, const paper::TextStyle& style) {
  for (const std::string& line : paper::lines_of(text, width(), style)) {
    block(style.size * line_spacing, [&](paper::Drawing& page, paper::Spot at) {
      page.text(line, {at.x, at.y + style.size}, style);
    });
  }
}

void Flow::bar(const std::string& title, const Look& look, double keep_below) {
  paper::TextStyle style{.size = look.text() * 1.05, .bold = true, .colour = white};
  const double room = width() - 12;
  style = paper::narrowed(title, room, style, least_heading);
  const std::vector<std::string> lines = paper::lines_of(title, room, style);
  const double line = style.size * line_spacing;
  const double height = look.bar() + line * static_cast<double>(lines.size() - 1);
  keep(height + 4 + keep_below);
  block(height + 4, [&](paper::Drawing& page, paper::Spot at) {
    page.fill(paper::rectangle({at.x, at.y, width(), height}), {black});
    double y = at.y + look.bar() / 2 + style.size * 0.36;
    for (const std::string& words : lines) {
      page.text(words, {at.x + 6, y}, style);
      y += line;
    }
  });
}

namespace {

void add_in_columns(Flow& flow, const std::vector<std::string>& texts,
                    const paper::TextStyle& style, std::size_t columns) {
  const std::size_t rows = (texts.size() + columns - 1) / columns;
  const double width = flow.width() / static_cast<double>(columns);
  const double height = style.size * line_spacing;
  for (std::size_t row = 0; row < rows; ++row) {
    std::vector<std::vector<std::string>> cells;
    std::size_t tallest = 1;
    for (std::size_t i = row; i < texts.size(); i += rows) {
      cells.push_back(paper::lines_of(texts[i], width - indent_of(style), style));
      tallest = std::max(tallest, cells.back().size());
    }
    flow.block(height * static_cast<double>(tallest), [&](paper::Drawing& page, paper::Spot at) {
      for (std::size_t column = 0; column < cells.size(); ++column) {
        const double x = at.x + width * static_cast<double>(column);
        tick_box(page, {x, at.y + style.size * 0.15}, style.size * 0.95);
        double y = at.y + style.size;
        for (const std::string& line : cells[column]) {
          page.text(line, {x + indent_of(style), y}, style);
          y += height;
        }
      }
    });
  }
}

}  // namespace

void add_list(Flow& flow, const std::vector<std::string>& texts, const paper::TextStyle& style) {
  if (texts.empty()) return;
  add_in_columns(flow, texts, style,
                 static_cast<std::size_t>(columns_for(texts, flow.width(), style)));
}

void add_steps(Flow& flow, const std::vector<std::string>& texts, const paper::TextStyle& style) {
  add_in_columns(flow, texts, style, 1);
}

void add_sentences(Flow& flow, const std::vector<std::string>& sentences, const char* mark,
                   const paper::TextStyle& style) {
  std::string line;
  const auto flush = [&] {
    if (!line.empty()) flow.text(line, style);
    line.clear();
  };
  for (const std::string& sentence : sentences) {
    const std::string marked = std::string(mark) + " " + sentence;
    const std::string longer = line.empty() ? marked : line + "   " + marked;
    if (!line.empty() && paper::text_width(longer, style) > flow.width()) {
      flush();
      line = marked;
    } else {
      line = longer;
    }
  }
  flush();
}

void add_head(Flow& flow, const std::string& title, const std::string& summary,
              const std::string& lie, const std::vector<std::string>& cautions, const Look& look) {
  flow.text(title, {.size = look.title(), .bold = true});
  flow.text(summary, {.size = look.text()});
  flow.text(lie, {.size = look.text()});
  add_sentences(flow, cautions, "!", {.size = look.small()});
  flow.gap(4);
}

void add_blanks(Flow& flow, const std::vector<std::string>& blanks, const Locale& locale,
                const Look& look) {
  flow.bar(locale.say(blanks_title), look, look.text() * 2);
  add_list(flow, blanks, {.size = look.text()});
}

}  // namespace mullion::cutsheet
