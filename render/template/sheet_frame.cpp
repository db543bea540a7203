#include "render/template/sheet_frame.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Spot;
using paper::TextStyle;

std::string correction_text(const TemplateOptions& options) {
  if (!options.printer) return {};
  const Correction& found = options.printer->correction;
  char text[96];
  std::snprintf(text, sizeof text, "across %+.2f %%, down %+.2f %%, skew %+.2f %%",
                (1 / found.scale_x - 1) * 100, (1 / found.scale_y - 1) * 100, -found.skew * 100);
  return "Corrected for the printer " + options.printer->name + ": " + text;
}

}  // namespace

Spot shrinkage(const TemplateOptions& options, const paper::SheetSize& sheet) {
  if (!options.printer) return {1, 1};
  const Correction& found = options.printer->correction;
  const double width = to_inches(sheet.width), height = to_inches(sheet.height);
  const double ratio = sheet.roll ? 5 : std::max(width, height) / std::min(width, height);
  return {std::min(1.0, found.scale_x - std::abs(found.skew) * ratio),
          std::min(1.0, found.scale_y * std::sqrt(1 - found.skew * found.skew))};
}

SheetFrame sheet_frame(const TemplateOptions& options, const paper::PageSize& size) {
  const Spot left_over = shrinkage(
      options, options.sheet.value_or(paper::SheetSize{"", size.width, size.height, false}));
  const double page_width = paper::points(size.width), page_height = paper::points(size.height);
  const double edge = paper::points(options.unprintable);
  const double wide = (page_width - 2 * edge) * left_over.x;
  const double high = (page_height - 2 * edge) * left_over.y;
  const double x = (page_width - wide) / 2, y = (page_height - high) / 2;
  const double foot = paper::points(sheet_foot);
  return {size, {x, y, wide, high - foot}, {x, y + high - foot, wide, foot}};
}

paper::Box draw_foot(paper::Drawing& drawing, const SheetFrame& frame, const BoardView& view,
                     const TemplateOptions& options, const std::string& name) {
  const paper::Box& foot = frame.foot;
  const double top = foot.y + 3;
  double x = foot.x + draw_double_rule(drawing, {foot.x, top}, foot.width) + 14;
  if (x + 86 < foot.x + foot.width) x += draw_diagonal_square(drawing, {x, top}) + 14;
  const paper::Box map{x, top, std::max(0.0, foot.x + foot.width - x), 40};

  const TextStyle strong{8, true, {0, 0, 0}, Anchor::left, 0};
  const TextStyle plain{7, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
  const double low = foot.y + foot.height;
  const std::string title = name + "  \xC2\xB7  " + sheet_subject(view);
  drawing.text(paper::fitted(title, foot.width, strong), {foot.x, low - 11}, strong);
  std::string line =
      "BACK OF BOARD, mirrored  \xC2\xB7  print at 100 %, no scaling; check the rules";
  if (options.printer)
    line = "BACK OF BOARD  \xC2\xB7  100 %, no scaling  \xC2\xB7  " + correction_text(options);
  drawing.text(paper::fitted(line, foot.width, plain), {foot.x, low - 2}, plain);
  return map;
}

}  // namespace mullion
