#include "render/cutsheet/cutsheet.h"

#include <algorithm>

#include "engine/cutting/sheet/cautions.h"
#include "engine/cutting/sheet/words.h"
#include "render/cutsheet/set_up_block.h"
#include "render/paper/drawing.h"

namespace mullion {
namespace {

using cutsheet::Flow;
using paper::Canvas;
using paper::Spot;

// Tried from large to small until the sheet is one page; else the first is used.
constexpr double sizes[] = {1.15, 1.0, 0.9, 0.8, 0.7};
constexpr Colour black{0, 0, 0}, white{0xff, 0xff, 0xff};
constexpr Colour amount_colour{0xff, 0xf0, 0xb0};

std::string title_of(const CuttingPlan& plan) {
  std::string out = "Cutting plan";
  if (!plan.reference.empty()) out += " " + plan.reference;
  if (!plan.title.empty()) out += ": " + plan.title;
  return out;
}

paper::PageSize page_for(const CuttingPlan& plan) {
  if (plan.cutter.scale.unit == Unit::inch) return {sixty_fourths(544), inches(11)};
  return {millimetres(210), millimetres(297)};
}

class Sheet {
 public:
  Sheet(const CuttingPlan& plan, const std::string& date, double size)
      : plan_(plan), size_(size), flow_(page_for(plan), title_of(plan), date) {}

  int pages() const { return flow_.pages(); }
  std::string finish() { return flow_.finish(); }

  void write() {
    head();
    bar("Blanks: straight blade, no backing sheet, guide and stops off");
    for (const StraightCut& side : plan_.blanks) {
      flow_.tick(blank_text(plan_, side) +
                     (plan_.quantity > 1 ? ", " + std::to_string(plan_.quantity) + " of each" : ""),
                 text());
    }
    for (const Stage& stage : plan_.stages) add_stage(stage);
    flow_.gap(8);
    flow_.keep(40);
    for (const std::string& caution : cautions(plan_)) {
      flow_.text("! " + caution, {.size = std::max(8.0, 9 * size_)});
    }
  }

 private:
  paper::TextStyle text() const { return {.size = std::max(10.5 * size_, 8.5)}; }

  void head() {
    const Scale& scale = plan_.cutter.scale;
    const paper::TextStyle large{.size = 17 * size_, .bold = true};
    flow_.text(title_of(plan_), large);
    const std::string copies =
        plan_.quantity == 1 ? "1 mat" : std::to_string(plan_.quantity) + " mats alike";
    flow_.text(copies + ", " + describe(plan_.outer.width(), scale) + " x " +
                   describe(plan_.outer.height(), scale) + ". " + plan_.cutter.name +
                   ", cut with " + name_of(plan_.way) + "; " + duration_text(plan_.seconds) + ".",
               {.size = 12 * size_});
    flow_.text(
        "Boards lie face down. Letter the back's edges clockwise: A top, B, C, D. "
        "Red: the line to cut now, pulled toward you.",
        text());
    flow_.gap(5 * size_);
  }

  void bar(const std::string& title) {
    const double height = 18 * size_;
    flow_.keep(height * 3);
    flow_.block(height + 4, [&](Canvas& canvas, Spot at) {
      canvas.fill({at.x, at.y, flow_.width(), height}, {black});
      canvas.text(canvas.fitted(title, flow_.width() - 12, {.size = 11.5 * size_, .bold = true}),
                  {at.x + 6, at.y + height * 0.7},
                  {.size = 11.5 * size_, .bold = true, .colour = white});
    });
  }

  void add_stage(const Stage& stage) {
    flow_.gap(6 * size_);
    bar(stage_text(plan_, stage));
    if (const std::string prepare = prepare_text(plan_, stage); !prepare.empty()) {
      flow_.text(prepare, text());
    }
    add_amount(shift_text(plan_, stage));
    for (const PencilLine& line : stage.pencil_lines) {
      flow_.tick("Draw " + pencil_text(plan_, line), text());
    }
    flow_.gap(3);
    for (const SetUp& set_up : stage.set_ups) {
      cutsheet::add_set_up(flow_, plan_, stage, set_up, size_);
    }
    for (const SkewCut& cut : stage.skew_cuts) {
      flow_.tick("Cut " + std::to_string(cut.number) + ", " + skew_text(plan_, cut), text());
    }
    for (const CurveCut& curve : stage.curves) flow_.tick(curve_text(plan_, curve), text());
    for (const GrooveTrim& trim : stage.trims) flow_.tick(trim_text(plan_, trim), text());
  }

  // The one amount of a layer, said once and large.
  void add_amount(const std::string& shift) {
    if (shift.empty()) return;
    const paper::TextStyle large{.size = 16 * size_, .bold = true};
    const auto lines = cutsheet::wrapped(shift, flow_.width() - 16, large);
    const double line = large.size * cutsheet::line_spacing;
    const double height = line * static_cast<double>(lines.size()) + 20 * size_;
    flow_.block(height + 4, [&](Canvas& canvas, Spot at) {
      canvas.fill({at.x, at.y, flow_.width(), height}, {amount_colour});
      canvas.text("Same edges, same order; every setting changed by one amount:",
                  {at.x + 8, at.y + 13 * size_}, {.size = 10.5 * size_});
      double y = at.y + 13 * size_;
      for (const std::string& words : lines) {
        y += line;
        canvas.text(words, {at.x + 8, y}, large);
      }
    });
  }

  const CuttingPlan& plan_;
  double size_;
  Flow flow_;
};

}  // namespace

std::string render_cutsheet(const CuttingPlan& plan, const std::string& date) {
  for (const double size : sizes) {
    Sheet sheet(plan, date, size);
    sheet.write();
    if (sheet.pages() == 1) return sheet.finish();
  }
  Sheet sheet(plan, date, 1.0);
  sheet.write();
  return sheet.finish();
}

}  // namespace mullion
