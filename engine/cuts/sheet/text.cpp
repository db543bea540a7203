#include "engine/cuts/sheet/text.h"

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/plan_lines.h"
#include "engine/cuts/sheet/words.h"

namespace mullion {
namespace {

std::string copies(const ToldPlan& plan) {
  return plan.quantity == 1 ? "1 mat" : std::to_string(plan.quantity) + " mats alike";
}

void write_head(TextLines& out, const ToldPlan& plan) {
  const Scale& scale = plan.cutter.scale;
  std::string name = plan.reference;
  if (!plan.title.empty()) name += (name.empty() ? "" : ", ") + plan.title;
  out.line("Cutting plan" + (name.empty() ? "" : ": " + name));
  out.line("  " + copies(plan) + ", " + describe(plan.outer.width(), scale) + " x " +
           describe(plan.outer.height(), scale) + "; " + plan.cutter.name);
  std::string ways;
  for (const WayTime& way : plan.ways) {
    ways += (ways.empty() ? "" : ", ") + std::string(name_of(way.way)) + " " +
            duration_text(way.seconds);
  }
  out.line("  Cut with " + std::string(name_of(plan.way)) + " (" + ways + ")");
  if (plan.bound < plan.seconds) {
    out.line("  No order of the cuts takes less than " + duration_text(plan.bound));
  }
  out.line("  Boards lie face down. Letter the back's edges clockwise: A top, B, C, D.");
}

void write_set_up(TextLines& out, const ToldPlan& plan, const SetUp& set_up) {
  std::string head =
      "Set-up " + std::to_string(set_up.number) + ": " + settings_text(plan, set_up.settings);
  if (plan.quantity > 1) head += " | all " + std::to_string(plan.quantity) + " blanks";
  out.wrapped("  ", head);
  write_placements(out, plan, set_up);
}

void write_stage(TextLines& out, const ToldPlan& plan, const Stage& stage) {
  out.line("");
  out.line(stage_text(plan, stage));
  write_before(out, plan, stage);
  for (const SetUp& set_up : stage.set_ups) write_set_up(out, plan, set_up);
  write_after(out, plan, stage);
}

}  // namespace

std::string plan_to_text(const CuttingPlan& planned) {
  const ToldPlan plan{planned, {}};
  TextLines out;
  write_head(out, plan);
  out.line("");
  out.line("BLANKS  straight blade, no backing sheet, guide and stops off");
  for (const StraightCut& side : plan.blanks) out.wrapped("  [ ] ", blank_text(plan, side));
  for (const Stage& stage : plan.stages) write_stage(out, plan, stage);
  out.line("");
  write_cautions(out, cautions(plan));
  return out.take();
}

}  // namespace mullion
