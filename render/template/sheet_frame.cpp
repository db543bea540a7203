#include "render/template/sheet_frame.h"

#include <algorithm>

#include "render/template/corrected.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Spot;
using paper::TextStyle;

const TextStyle foot_strong{8, true, {0, 0, 0}, Anchor::left, 0};
const TextStyle foot_plain{7, false, {0x20, 0x20, 0x20}, Anchor::left, 0};
constexpr double room_for_name = 130;  // points: "Corners 10-12 to 12-12"

}  // namespace

TemplateOptions with_sheet(TemplateOptions options, const Scale& scale) {
  if (!options.sheet) {
    options.sheet = *paper::parse_sheet_size(
        options.locale.letter_paper(scale.unit) ? "letter" : "a4", scale.unit);
  }
  options.sheet->height = paper::whole_page(*options.sheet).height;
  return options;
}

SheetFrame sheet_frame(const TemplateOptions& options, const paper::PageSize& size) {
  const paper::SheetSize sheet =
      options.sheet.value_or(paper::SheetSize{"", size.width, size.height, false});
  const bool turned = is_turned(options, size);
  const paper::Shrink left_over = shrinkage(options, sheet, turned);
  const Sides white = unprintable(options, turned);
  const double middle_x = paper::points(size.width) / 2, middle_y = paper::points(size.height) / 2;
  const double x = middle_x - (middle_x - paper::points(white.left)) * left_over.x;
  const double y = middle_y - (middle_y - paper::points(white.top)) * left_over.y;
  const double wide = middle_x + (middle_x - paper::points(white.right)) * left_over.x - x;
  const double high = middle_y + (middle_y - paper::points(white.bottom)) * left_over.y - y;
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
                     locale.say("print one-sided at 100 %, no scaling; check the rules");
  if (options.printer) {
    line = locale.say("BACK OF BOARD") + middle_dot + locale.say("one-sided, 100 %, no scaling") +
           middle_dot + correction_text(options);
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
