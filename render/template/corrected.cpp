#include "render/template/corrected.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace mullion {
namespace {

// What the printer makes of an upright page.
paper::Transform printed(const Correction& found) {
  const double upright = std::sqrt(1 - found.skew * found.skew);
  return {found.scale_x, 0, found.scale_y * found.skew, found.scale_y * upright, 0, 0};
}

}  // namespace

bool is_turned(const TemplateOptions& options, const paper::PageSize& page) {
  if (!options.sheet) return false;
  return options.sheet->roll ? page.width != options.sheet->width : page.width > page.height;
}

// Turned by a quarter this way or that makes no difference: half a turn changes no direction.
paper::Transform undoing(const TemplateOptions& options, const paper::PageSize& page) {
  if (!options.printer) return {};
  paper::Transform done = printed(options.printer->correction);
  if (is_turned(options, page)) {
    const paper::Transform quarter{0, 1, -1, 0, 0, 0};
    done = paper::then(paper::then(quarter, done), paper::inverse(quarter));
  }
  const double x = paper::points(page.width) / 2, y = paper::points(page.height) / 2;
  return paper::then(paper::then(paper::shifted(-x, -y), paper::inverse(done)),
                     paper::shifted(x, y));
}

paper::Shrink shrinkage(const TemplateOptions& options, const paper::SheetSize& sheet,
                        bool turned) {
  if (!options.printer) return {};
  const Correction& found = options.printer->correction;
  const double width = to_inches(sheet.width), height = to_inches(sheet.height);
  const double ratio = sheet.roll ? 5 : std::max(width, height) / std::min(width, height);
  const double across = std::min(1.0, found.scale_x - std::abs(found.skew) * ratio);
  const double down = std::min(1.0, found.scale_y * std::sqrt(1 - found.skew * found.skew));
  return turned ? paper::Shrink{down, across} : paper::Shrink{across, down};
}

Sides unprintable(const TemplateOptions& options, bool turned) {
  const Sides& white = options.unprintable;
  if (!turned) return white;
  const Length beside = std::max(white.top, white.bottom),
               above = std::max(white.left, white.right);
  return {beside, above, beside, above};
}

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

}  // namespace mullion
