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
  out.wrapped("  ", chosen_text(plan, {}));
  if (plan.bound < plan.seconds) {
    out.line("  No order of the cuts takes less than " + duration_text(plan.bound));
  }
  out.line("  Boards lie face down. Letter the back's edges clockwise: A top, B, C, D.");
}

void write_set_up(TextLines& out, const ToldPlan& plan, const Stage& stage, const SetUp& set_up) {
  std::string head =
      "Set-up " + std::to_string(set_up.number) + ": " + settings_text(plan, set_up.settings);
  if (plan.quantity > 1) head += " | all " + std::to_string(plan.quantity) + " blanks";
  out.wrapped("  ", head);
  write_placements(out, plan, stage, set_up);
}

void write_stage(TextLines& out, const ToldPlan& plan, const Stage& stage) {
  out.line("");
  out.line(stage_text(plan, stage));
  write_before(out, plan, stage);
  for (const SetUp& set_up : stage.set_ups) write_set_up(out, plan, stage, set_up);
  write_after(out, plan, stage);
}

}  // namespace

std::string marks_to_text(const CuttingPlan& planned) {
  const ToldPlan plan{planned, {}};
  TextLines out;
  out.line("Lines to draw on the backs, lettered clockwise: A top, B, C, D.");
  for (const Stage& stage : plan.stages) {
    out.line("");
    out.line(stage_text(plan, stage));
    write_before(out, plan, stage);
  }
  return out.take();
}

std::string plan_to_text(const CuttingPlan& planned) {
  const ToldPlan plan{planned, {}};
  TextLines out;
  write_head(out, plan);
  out.line("");
  out.line("BLANKS  straight blade, no backing sheet, guide and stops off");
  for (const StraightCut& side : plan.blanks) out.wrapped("  [ ] ", blank_text(plan, side));
  if (const std::string gauges = gauges_text(plan); !gauges.empty()) out.wrapped("  [ ] ", gauges);
  for (const Stage& stage : plan.stages) write_stage(out, plan, stage);
  out.line("");
  write_cautions(out, cautions(plan));
  return out.take();
}

}  // namespace mullion
