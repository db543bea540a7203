#include <algorithm>

#include "render/proof/blocks.h"
#include "render/proof/sizes.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double key_width = 100, key_height = 108, gap = 20, head = 10, materials_width = 118;
constexpr double estimate_width = 156, part_gap = 12;
constexpr std::size_t most_side_by_side = 3;  // estimates; of more choices only the totals

using Block = std::function<double(paper::Spot, double)>;

// A heading in small capitals, the block below it.
double titled(paper::Drawing& page, const std::string& title, paper::Spot corner, double width,
              const Block& block) {
  page.text(upper_case(title), {corner.x, corner.y + 6}, type::heading());
  return head + block({corner.x, corner.y + head}, width);
}

double key(paper::Drawing& page, const Sheet& sheet, paper::Spot corner) {
  return draw_key(page, sheet.choices.front().piece, {corner.x, corner.y, key_width, key_height});
}

double sizes(paper::Drawing& page, const Facts& facts, const Locale& locale, paper::Spot corner,
             double width) {
  if (facts.sizes.empty()) return 0;
  return titled(page, locale.say(words::sizes), corner, width, [&](paper::Spot at, double room) {
    return draw_sizes(page, facts.sizes, at, room);
  });
}

double materials(paper::Drawing& page, const Facts& facts, const Locale& locale, paper::Spot corner,
                 double width) {
  if (facts.materials.empty()) return 0;
  return titled(page, locale.say(words::materials), corner, width,
                [&](paper::Spot at, double room) {
                  return draw_materials(page, facts.materials, {at.x, at.y + 3}, room);
                });
}

double prices(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width) {
  if (price_rows(sheet).empty()) return 0;
  return titled(page, sheet.locale.say(words::estimate), corner, width,
                [&](paper::Spot at, double room) { return draw_prices(page, sheet, at, room); });
}

// Key, sizes with the materials below them, and the estimate.
double draw_three_columns(paper::Drawing& page, const Sheet& sheet, const Facts& facts,
                          paper::Spot corner, double width) {
  const double x = corner.x + key_width + gap;
  const double room = width - key_width - estimate_width - 2 * gap;
  double middle = sizes(page, facts, sheet.locale, {x, corner.y}, room) + part_gap;
  middle += materials(page, facts, sheet.locale, {x, corner.y + middle}, room);
  return std::max(
      {key(page, sheet, corner), middle,
       prices(page, sheet, {corner.x + width - estimate_width, corner.y}, estimate_width)});
}

double draw_without_prices(paper::Drawing& page, const Sheet& sheet, const Facts& facts,
                           paper::Spot corner, double width) {
  const double x = corner.x + key_width + gap, right = corner.x + width - materials_width;
  return std::max({key(page, sheet, corner),
                   sizes(page, facts, sheet.locale, {x, corner.y}, right - gap - x),
                   materials(page, facts, sheet.locale, {right, corner.y}, materials_width)});
}

bool needs_key(const Sheet& sheet) {
  return std::any_of(sheet.choices.begin(), sheet.choices.end(), [](const Choice& choice) {
    return seen_openings(*choice.piece.mat).size() > 1;
  });
}

// What all choices share, and below it the estimates of a few side by side.
double draw_for_choices(paper::Drawing& page, const Sheet& sheet, const Facts& common,
                        paper::Spot corner, double width) {
  const bool keyed = needs_key(sheet);
  const double x = keyed ? corner.x + key_width + gap : corner.x;
  const double right = corner.x + width - (keyed ? materials_width : width / 2 - gap);
  double height =
      std::max(sizes(page, common, sheet.locale, {x, corner.y}, right - gap - x),
               materials(page, common, sheet.locale, {right, corner.y}, corner.x + width - right));
  if (keyed) height = std::max(height, key(page, sheet, corner));
  if (sheet.choices.size() > most_side_by_side) return height;
  if (height > 0) height += part_gap;
  return height + prices(page, sheet, {corner.x, corner.y + height}, width);
}

}  // namespace

double draw_legend(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width) {
  const Facts facts = told_apart(sheet).common;
  if (sheet.choices.size() > 1) return draw_for_choices(page, sheet, facts, corner, width);
  return sheet.choices.front().prices.empty()
             ? draw_without_prices(page, sheet, facts, corner, width)
             : draw_three_columns(page, sheet, facts, corner, width);
}

}  // namespace mullion::proof
