#include <algorithm>
#include <cstdio>

#include "render/proof/blocks.h"
#include "render/proof/type.h"
#include "render/proof/words.h"

namespace mullion::proof {
namespace {

constexpr double tick = 9, tick_row = 15, line_room = 38, foot = 18, check_leading = 12;

// A signed letter is tied to one version of its own job.
double draw_tick_boxes(paper::Drawing& page, const Sheet& sheet, paper::Spot spot, double width) {
  const std::size_t columns = 2;
  for (std::size_t i = 0; i < sheet.choices.size(); ++i) {
    const Job& job = *sheet.choices[i].piece.job;
    const double x = spot.x + width / columns * static_cast<double>(i % columns);
    const std::size_t row = i / columns;
    const double y = spot.y + tick_row * static_cast<double>(row);
    page.stroke(paper::rectangle({x, y - tick + 1, tick, tick}), {0.6, type::ink, {}, 1});
    page.text(letter_of(i), {x + tick + 5, y}, type::strong(10));
    page.text(words::version(job, job_mark(job), sheet.locale), {x + tick + 17, y}, type::faint(8));
  }
  const std::size_t last_row = (sheet.choices.size() - 1) / columns;
  return tick_row * static_cast<double>(last_row);
}

void draw_signature_line(paper::Drawing& page, double left, double right, double y,
                         const std::string& what) {
  page.stroke(paper::line({left, y}, {right, y}), {0.6, type::ink, {}, 1});
  page.text(what, {left, y + 9}, type::faint(7));
}

// Returns where its last line stands.
double draw_approved(paper::Drawing& page, const Sheet& sheet, paper::Spot spot, double width) {
  const Job& job = *sheet.choices.front().piece.job;
  const bool one = sheet.choices.size() == 1;
  page.text(one ? words::approval(job, job_mark(job), sheet.locale)
                : sheet.locale.say(words::approval_of_choice),
            spot, type::body(9));
  if (one) return spot.y;
  return spot.y + 18 + draw_tick_boxes(page, sheet, {spot.x, spot.y + 18}, width);
}

}  // namespace

double draw_approval(paper::Drawing& page, const Sheet& sheet, paper::Spot corner, double width) {
  const double right = corner.x + width;
  page.stroke(paper::line(corner, {right, corner.y}), {0.5, type::rule, {}, 1});
  const double left_width = width * 0.42, right_x = corner.x + left_width + 26;
  page.text(upper_case(sheet.locale.say(words::please_check)), {corner.x, corner.y + 18},
            type::heading());
  const auto checked = static_cast<double>(
      paper::draw_lines(page, sheet.locale.say(words::what_to_check), {corner.x, corner.y + 31},
                        left_width, type::faint(8), check_leading));
  const double approved = draw_approved(page, sheet, {right_x, corner.y + 20}, right - right_x);
  const double y = std::max(approved + line_room, corner.y + 74);
  draw_signature_line(page, right_x, right - 92, y, sheet.locale.say(words::signature));
  draw_signature_line(page, right - 78, right, y, sheet.locale.say(words::date));
  return std::max(y + foot, corner.y + 24 + checked * check_leading) - corner.y;
}

void draw_footer(paper::Drawing& page, const Sheet& sheet, double scale, const paper::Box& box) {
  const double y = box.y + box.height;
  if (sheet.head) {
    std::string line;
    const auto add = [&](const std::string& part) {
      if (!part.empty()) line += (line.empty() ? "" : "  \xC2\xB7  ") + part;
    };
    for (const std::string& part : sheet.head->shop.address) add(part);
    add(sheet.head->shop.phone);
    add(sheet.head->shop.email);
    page.text(paper::fitted(line, box.width - 130, type::faint(7)), {box.x, y}, type::faint(7));
  }
  char ratio[32];
  std::snprintf(ratio, sizeof ratio, "%.3g", 1 / scale);
  page.text(sheet.locale.say("Picture drawn at 1 : %1", sheet.locale.number(ratio)),
            {box.x + box.width, y}, type::right(type::faint(7)));
}

}  // namespace mullion::proof
