#include "render/template/calibration_page.h"

#include <algorithm>
#include <cstdio>

#include "render/paper/document.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

constexpr Length least_side = millimetres(125);  // the instructions stand inside
constexpr const char* calibration_title = mark("Printer calibration");
const paper::Pen line_pen{0.4, {0, 0, 0}, {}, 1};
const paper::Pen measured_pen{0.3, {0x50, 0x50, 0x50}, {}, 1};

std::string decimal(Length length, Unit unit, const Locale& locale) {
  char text[48];
  if (unit == Unit::inch) {
    std::snprintf(text, sizeof text, "%.3f", to_inches(length));
  } else {
    std::snprintf(text, sizeof text, "%.1f", to_millimetres(length));
  }
  return locale.number(text) + " " + locale.unit(unit);
}

// Ticks inward along one side, `step` apart, the fourth of them longer.
void draw_ticks(Drawing& drawing, Spot from, Spot along, Spot inward, double length, double step,
                int major) {
  paper::Path ticks;
  for (int i = 0; i * step <= length + 1e-6; ++i) {
    const double size = i % major == 0 ? 9 : 4.5;
    const Spot at{from.x + along.x * step * i, from.y + along.y * step * i};
    ticks.append(paper::line(at, {at.x + inward.x * size, at.y + inward.y * size}));
  }
  drawing.stroke(ticks, line_pen);
}

void draw_corner(Drawing& drawing, Spot at, const char* letter, double dx, double dy) {
  constexpr double arm = 14;
  drawing.stroke(paper::line({at.x - arm, at.y}, {at.x + arm, at.y}), line_pen);
  drawing.stroke(paper::line({at.x, at.y - arm}, {at.x, at.y + arm}), line_pen);
  drawing.text(letter, {at.x + dx, at.y + dy}, {14, true, {0, 0, 0}, Anchor::centre, 0});
}

void draw_rectangle(Drawing& drawing, const Box& box, Unit unit) {
  const double right = box.x + box.width, bottom = box.y + box.height;
  drawing.stroke(paper::rectangle(box), line_pen);
  drawing.stroke(paper::line({box.x, box.y}, {right, bottom}), measured_pen);
  drawing.stroke(paper::line({box.x, bottom}, {right, box.y}), measured_pen);
  const double step =
      unit == Unit::inch ? paper::points(sixty_fourths(16)) : paper::points(millimetres(5));
  const int major = unit == Unit::inch ? 4 : 2;
  draw_ticks(drawing, {box.x, box.y}, {1, 0}, {0, 1}, box.width, step, major);
  draw_ticks(drawing, {box.x, box.y}, {0, 1}, {1, 0}, box.height, step, major);
  draw_corner(drawing, {box.x, box.y}, "A", -12, -6);
  draw_corner(drawing, {right, box.y}, "B", 12, -6);
  draw_corner(drawing, {box.x, bottom}, "C", -12, 16);
  draw_corner(drawing, {right, bottom}, "D", 12, 16);
}

void draw_words(Drawing& drawing, const Box& box, Unit unit, const CalibrationSides& sides,
                const paper::SheetSize& paper, const Locale& locale) {
  const double middle = box.x + box.width / 2;
  const Box plate{middle - 165, box.y + box.height / 2 - 112, 330, 224};
  drawing.fill(paper::rectangle(plate), {{255, 255, 255}, 1});
  drawing.stroke(paper::rectangle(plate), line_pen);
  const double x = plate.x + 14;
  drawing.text(locale.say(calibration_title), {x, plate.y + 26},
               {16, true, {0, 0, 0}, Anchor::left, 0});
  const TextStyle plain{8.5, false, {0, 0, 0}, Anchor::left, 0};
  const paper::Text steps(
      locale.say(
          "Print one-sided at 100 %, no scaling, no \"fit to page\". Let the paper rest until it "
          "is flat. "
          "Measure from crossing to crossing with a steel rule, as finely as you can read it; then "
          "once more from the other end. Note both:"),
      plain, plate.width - 28);
  drawing.text(steps, {x, plate.y + 44});
  const CalibrationReading nominal = nominal_reading(sides.across, sides.down);
  struct Line {
    const char* what;
    Length nominal;
  };
  const Line lines[] = {{mark("across, A to B"), nominal.across},
                        {mark("down, A to C"), nominal.down},
                        {mark("falling, A to D"), nominal.falling},
                        {mark("rising, C to B"), nominal.rising}};
  double y = plate.y + 98;
  for (const Line& line : lines) {
    drawing.text(locale.say(line.what), {x, y}, {9, true, {0, 0, 0}, Anchor::left, 0});
    drawing.stroke(paper::line({x + 96, y + 2}, {x + 142, y + 2}), line_pen);
    drawing.stroke(paper::line({x + 150, y + 2}, {x + 196, y + 2}), line_pen);
    drawing.text(locale.say("drawn: %1", decimal(line.nominal, unit, locale)), {x + 204, y},
                 {7.5, false, {0x40, 0x40, 0x40}, Anchor::left, 0});
    y += 22;
  }
  std::string asked = paper.name;
  if (asked.find(' ') != std::string::npos) asked = "\"" + asked + "\"";
  const paper::Text last("mullion printer -o printer.xml --name NAME --paper " + asked +
                             " --unit " + (unit == Unit::inch ? "in" : "mm") +
                             "\n    --across .. .. --down .. .. --falling .. .. --rising .. ..\n" +
                             "mullion template JOB --printer printer.xml ..\n" +
                             locale.say("Measure again after a change of paper, tray or toner."),
                         {7.5, false, {0, 0, 0}, Anchor::left, 0}, plate.width - 28);
  drawing.text(last, {x, y + 2});
}

}  // namespace

paper::SheetSize calibration_paper(Unit unit) {
  return *paper::parse_sheet_size(unit == Unit::inch ? "letter" : "a4", unit);
}

CalibrationSides calibration_sides(const paper::SheetSize& paper, Unit unit) {
  const paper::PageSize page = paper::whole_page(paper);
  return calibration_sides(page.width, page.height, unit);
}

tl::expected<std::string, std::string> render_calibration(const paper::SheetSize& paper, Unit unit,
                                                          const Locale& locale) {
  const paper::PageSize size = paper::whole_page(paper);
  const CalibrationSides sides = calibration_sides(paper, unit);
  if (std::min(sides.across, sides.down) < least_side) {
    return tl::unexpected("the paper \"" + paper.name +
                          "\" is too small for a calibration page; expected 7 in or 180 mm a side");
  }
  const Box box{(paper::points(size.width) - paper::points(sides.across)) / 2,
                (paper::points(size.height) - paper::points(sides.down)) / 2,
                paper::points(sides.across), paper::points(sides.down)};
  Drawing drawing;
  draw_rectangle(drawing, box, unit);
  draw_words(drawing, box, unit, sides, paper, locale);
  const std::string title = locale.say(calibration_title);
  return paper::write_pdf({{size, title, std::move(drawing)}}, {title, "", 150, true});
}

}  // namespace mullion
