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

const TextStyle foot_strong{8, true, {0, 0, 0}, Anchor::left, 0};
const TextStyle foot_plain{7, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
constexpr double room_for_name = 130;  // points: "Corners 10-12 to 12-12"

std::string correction_text(const TemplateOptions& options) {
  if (!options.printer) return {};
  const Correction& found = options.printer->correction;
  const auto percent = [&](double share) {
    char text[32];
    std::snprintf(text, sizeof text, "%+.2f", share * 100);
    return options.locale.number(text);
  };
  return options.locale.say("Corrected for the printer %1: across %2 %, down %3 %, skew %4 %",
                            options.printer->name, percent(1 / found.scale_x - 1),
                            percent(1 / found.scale_y - 1), percent(-found.skew));
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

SheetFoot::SheetFoot(const SheetFrame& frame, const BoardView& view, const TemplateOptions& options)
    : subject_(paper::fitted(middle_dot + sheet_subject(view), frame.foot.width - room_for_name,
                             foot_strong),
               foot_strong) {
  const paper::Box& foot = frame.foot;
  const double top = foot.y + 3, low = foot.y + foot.height;
  Furniture furniture;
  double x = foot.x + add_double_rule(furniture, {foot.x, top}, foot.width, view.locale) + 14;
  if (x + 86 < foot.x + foot.width) x += add_diagonal_square(furniture, {x, top}, view.locale) + 14;
  room_ = {x, top, std::max(0.0, foot.x + foot.width - x), 40};
  const Locale& locale = view.locale;
  std::string line = locale.say("BACK OF BOARD, mirrored") + middle_dot +
                     locale.say("print at 100 %, no scaling; check the rules");
  if (options.printer) {
    line = locale.say("BACK OF BOARD") + middle_dot + locale.say("100 %, no scaling") + middle_dot +
           correction_text(options);
  }
  furniture.texts.text(paper::fitted(line, foot.width, foot_plain), {foot.x, low - 2}, foot_plain);
  paper::Drawing rules;
  rules.stroke(std::move(furniture.lines), furniture_pen);
  rules_ = std::make_shared<const paper::Drawing>(std::move(rules));
  words_ = std::make_shared<const paper::Drawing>(std::move(furniture.texts));
  baseline_ = {foot.x, low - 11};
}

void SheetFoot::draw_rules(paper::Drawing& drawing) const {
  drawing.place({rules_, {}, {}, "check-rules", "", true});
}

void SheetFoot::draw_words(paper::Drawing& drawing, const std::string& name) const {
  const paper::Text set(name, foot_strong);
  drawing.place({words_, {}, {}, "foot", "", true});
  drawing.text(set, baseline_);
  drawing.text(subject_, {baseline_.x + set.width(), baseline_.y});
}

}  // namespace mullion
