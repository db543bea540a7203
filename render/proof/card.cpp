#include "render/proof/blocks.h"
#include "render/proof/type.h"

namespace mullion::proof {
namespace {

constexpr double letter_width = 18, leading = 11, note_leading = 9.5, card_part_gap = 7,
                 card_foot = 10;

double draw_title(paper::Drawing& page, const std::string& letter, const std::string& caption,
                  paper::Spot corner, double width) {
  page.text(letter, {corner.x, corner.y + 12}, type::strong(14));
  const auto lines = paper::draw_lines(page, caption, {corner.x + letter_width, corner.y + 12},
                                       width - letter_width, type::strong(9), leading);
  return 12 + leading * static_cast<double>(lines > 0 ? lines - 1 : 0) + card_part_gap;
}

double draw_total(paper::Drawing& page, const std::string& total, const Locale& locale,
                  paper::Spot corner, double width) {
  if (total.empty()) return 0;
  page.text(locale.say("Total"), {corner.x, corner.y + 9}, type::strong(9));
  page.text(total, {corner.x + width, corner.y + 9}, type::right(type::strong(9)));
  return 9 + card_part_gap;
}

}  // namespace

double draw_card(paper::Drawing& page, const Sheet& sheet, std::size_t choice, paper::Spot corner,
                 double width) {
  const Facts own = told_apart(sheet).own[choice];
  const Choice& chosen = sheet.choices[choice];
  paper::Spot at = corner;
  const auto down = [&](double height) { at.y += height; };
  down(draw_title(page, letter_of(choice), chosen.caption, at, width));
  down(draw_materials(page, own.materials, at, width));
  if (!own.sizes.empty()) down(draw_sizes(page, own.sizes, at, width) + card_part_gap);
  for (const std::string& note : chosen.notes) {
    down(note_leading * static_cast<double>(paper::draw_lines(page, note, {at.x, at.y + 7}, width,
                                                              type::faint(7.5), note_leading)));
  }
  if (!chosen.notes.empty()) down(card_part_gap - 2);
  down(draw_total(page, total_of(chosen), sheet.locale, at, width));
  return at.y - corner.y + card_foot;
}

}  // namespace mullion::proof
