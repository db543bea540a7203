#include "render/cutsheet/flow.h"

#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

constexpr double margin = 34;
constexpr double foot = 14;

}  // namespace

std::vector<std::string> wrapped(const std::string& text, double width,
                                 const paper::TextStyle& style) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && paper::text_width(longer, style) > width) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
    at = end + 1;
  }
  lines.push_back(line);
  return lines;
}

void tick_box(paper::Canvas& canvas, paper::Spot corner, double size) {
  canvas.rectangle({corner.x, corner.y, size, size}, {.width = 1, .dashes = {}});
}

Flow::Flow(paper::PageSize page, std::string title, const std::string& date)
    : page_(page), title_(std::move(title)), document_(paper::Format::pdf, {title_, date}) {
  next_page();
}

double Flow::width() const {
  return paper::points(page_.width) - 2 * margin;
}

void Flow::next_page() {
  ++pages_;
  canvas_ = &document_.add_page(page_, pages_ == 1 ? title_ : "Page " + std::to_string(pages_));
  y_ = margin;
  const double bottom = paper::points(page_.height) - margin + foot;
  canvas_->text(canvas_->fitted(title_, width() - 80, {.size = 8}), {margin, bottom}, {.size = 8});
  canvas_->text("page " + std::to_string(pages_), {margin + width(), bottom},
                {.size = 8, .anchor = paper::Anchor::right});
}

void Flow::keep(double height) {
  if (y_ > margin && y_ + height > paper::points(page_.height) - margin - foot / 2) next_page();
}

void Flow::block(double height, const Draw& draw) {
  keep(height);
  draw(*canvas_, {margin, y_});
  y_ += height;
}

void Flow::text(const std::string& text, const paper::TextStyle& style, double indent) {
  for (const std::string& line : wrapped(text, width() - indent, style)) {
    block(style.size * line_spacing, [&](paper::Canvas& canvas, paper::Spot at) {
      canvas.text(line, {at.x + indent, at.y + style.size}, style);
    });
  }
}

void Flow::tick(const std::string& text, const paper::TextStyle& style) {
  const double indent = style.size * 1.7;
  const auto lines = wrapped(text, width() - indent, style);
  const double height = style.size * line_spacing;
  block(height * static_cast<double>(lines.size()), [&](paper::Canvas& canvas, paper::Spot at) {
    tick_box(canvas, {at.x, at.y + style.size * 0.15}, style.size * 0.95);
    double y = at.y + style.size;
    for (const std::string& line : lines) {
      canvas.text(line, {at.x + indent, y}, style);
      y += height;
    }
  });
}

std::string Flow::finish() {
  return document_.finish();
}

}  // namespace mullion::cutsheet
