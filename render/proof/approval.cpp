#include <cstdio>

#include "render/proof/blocks.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

constexpr double caption_row = 14, price_row = 12;

void draw_tick_boxes(paper::Canvas& canvas, std::size_t count, paper::Spot spot) {
  canvas.text("I choose", spot, type::body(9));
  double x = spot.x + canvas.text_width("I choose", type::body(9)) + 12;
  for (std::size_t i = 0; i < count; ++i) {
    canvas.rectangle({x, spot.y - 8, 9, 9}, {0.6, type::ink, {}, 1});
    canvas.text(letter_of(i), {x + 13, spot.y}, type::strong(9));
    x += 36;
  }
}

void draw_signature_line(paper::Canvas& canvas, double left, double right, double y,
                         const std::string& what) {
  canvas.line({left, y}, {right, y}, {0.6, type::ink, {}, 1});
  canvas.text(what, {left, y + 9}, type::faint(7));
}

}  // namespace

double captions_height(const Sheet& sheet) {
  return sheet.choices.size() > 1 ? 14 + caption_row * static_cast<double>(sheet.choices.size())
                                  : 0;
}

void draw_captions(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box) {
  if (sheet.choices.size() < 2) return;
  double y = box.y + 8;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i, y += caption_row) {
    canvas.text(letter_of(i), {box.x, y}, type::strong(10));
    canvas.text(canvas.fitted(sheet.choices[i].caption, box.width - 20, type::body()),
                {box.x + 20, y}, type::body());
  }
}

double prices_height(const Sheet& sheet) {
  return sheet.prices.empty() ? 0 : 26 + price_row * static_cast<double>(sheet.prices.size());
}

void draw_prices(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box) {
  if (sheet.prices.empty()) return;
  const double width = box.width * 0.6;
  canvas.text("ESTIMATE", {box.x, box.y}, type::heading());
  double y = box.y + 15;
  const double right = box.x + width;
  for (const PriceLine& line : sheet.prices) {
    const paper::TextStyle style = line.is_total ? type::strong(9) : type::body();
    canvas.text(canvas.fitted(line.text, width - 90, style), {box.x, y}, style);
    canvas.text(line.amount, {right, y}, type::right(style));
    y += price_row;
  }
}

void draw_approval(paper::Canvas& canvas, const Sheet& sheet, const paper::Box& box) {
  const Job& job = *sheet.choices.front().piece.job;
  canvas.line({box.x, box.y}, {box.x + box.width, box.y}, {0.5, type::rule, {}, 1});
  const double left_width = box.width * 0.42, right_x = box.x + left_width + 26;
  canvas.text("BEFORE YOU SIGN, PLEASE CHECK", {box.x, box.y + 18}, type::heading());
  canvas.paragraph(
      "The spelling of every name and title. The crop of every picture. Sizes, borders and the "
      "boards chosen. Colours on a screen or in print differ from the board and the moulding "
      "themselves: ask to see the samples.",
      {box.x, box.y + 24}, left_width, type::faint(8));
  const std::string version =
      "I approve revision " + std::to_string(job.revision) + " (" + job_mark(job) + ") as shown.";
  canvas.text(version, {right_x, box.y + 20}, type::body(9));
  if (sheet.choices.size() > 1) {
    draw_tick_boxes(canvas, sheet.choices.size(), {right_x, box.y + 37});
  }
  const double right = box.x + box.width, y = box.y + 74;
  draw_signature_line(canvas, right_x, right - 92, y, "Signature");
  draw_signature_line(canvas, right - 78, right, y, "Date");
}

void draw_footer(paper::Canvas& canvas, const Sheet& sheet, double scale, const paper::Box& box) {
  const double y = box.y + box.height;
  if (sheet.head) {
    std::string line;
    const auto add = [&](const std::string& part) {
      if (!part.empty()) line += (line.empty() ? "" : "  \xC2\xB7  ") + part;
    };
    for (const std::string& part : sheet.head->shop.address) add(part);
    add(sheet.head->shop.phone);
    add(sheet.head->shop.email);
    canvas.text(canvas.fitted(line, box.width - 130, type::faint(7)), {box.x, y}, type::faint(7));
  }
  char text[64];
  std::snprintf(text, sizeof text, "Picture drawn at 1 : %.3g", 1 / scale);
  canvas.text(text, {box.x + box.width, y}, type::right(type::faint(7)));
}

}  // namespace mullion::proof
