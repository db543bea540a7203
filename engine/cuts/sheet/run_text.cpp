#include "engine/cuts/sheet/run_text.h"

#include <algorithm>

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/plan_lines.h"
#include "engine/cuts/sheet/words.h"

namespace mullion {
namespace {

std::string count(int n, const char* what) {
  return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

void write_head(TextLines& out, const CuttingRun& run) {
  out.line("Run of " + count(mats_in(run), "mat") + " of " +
           count(static_cast<int>(run.kinds.size()), "kind") + "; " + run.cutter.name);
  out.line("  " + duration_text(run.seconds) + "; kind by kind " + duration_text(run.alone) +
           "; with these cuts no order takes less than " + duration_text(run.bound));
  out.line("  Boards lie face down. Letter the back's edges clockwise: A top, B, C, D.");
  out.line("");
  out.line("KINDS");
  for (const RunKind& kind : run.kinds) {
    const Scale& scale = run.cutter.scale;
    out.wrapped("  kind " + std::to_string(kind.number) + "  ",
                count(kind.plan.quantity, "mat") + ", " + describe(kind.plan.outer.width(), scale) +
                    " x " + describe(kind.plan.outer.height(), scale) + ", cut with " +
                    name_of(kind.plan.way) + ": " + kind_text(kind, {}));
  }
}

void write_work(TextLines& out, const CuttingRun& run, const RunWork& work) {
  const RunKind& kind = kind_of(run, work);
  const ToldPlan plan{kind.plan, {}};
  const Stage& stage = stage_of(run, work);
  out.wrapped("  == ", "kind " + std::to_string(kind.number) + ", all " +
                           std::to_string(kind.plan.quantity) + " (" + kind_text(kind, {}) +
                           "): " + stage_text(plan, stage));
  if (begins_stage(work)) write_before(out, plan, stage);
  if (work.set_up >= 0) {
    write_placements(out, plan, stage, laid_anew(stage, work));
  }
  if (ends_stage(run, work)) write_after(out, plan, stage);
}

}  // namespace

SetUp laid_anew(const Stage& stage, const RunWork& work) {
  SetUp out = stage.set_ups[static_cast<std::size_t>(work.set_up)];
  out.placements.front().laid = true;
  out.placements.front().turns = 0;
  return out;
}

const RunKind& kind_of(const CuttingRun& run, const RunWork& work) {
  return run.kinds[static_cast<std::size_t>(work.kind)];
}

const Stage& stage_of(const CuttingRun& run, const RunWork& work) {
  return kind_of(run, work).plan.stages[static_cast<std::size_t>(work.stage)];
}

bool begins_stage(const RunWork& work) {
  return work.set_up <= 0;
}

bool ends_stage(const CuttingRun& run, const RunWork& work) {
  return work.set_up + 1 >= static_cast<int>(stage_of(run, work).set_ups.size());
}

std::string numbers_text(const std::vector<int>& ascending) {
  std::string out;
  for (std::size_t i = 0; i < ascending.size();) {
    std::size_t last = i;
    while (last + 1 < ascending.size() && ascending[last + 1] == ascending[last] + 1) ++last;
    out += (out.empty() ? "" : ", ") + std::to_string(ascending[i]);
    if (last > i) out += (last > i + 1 ? "\u2013" : ", ") + std::to_string(ascending[last]);
    i = last + 1;
  }
  return out;
}

std::string kind_text(const RunKind& kind, const Locale& locale) {
  std::string out;
  for (const RunShare& share : kind.shares) {
    out += (out.empty() ? "" : ", ") + locale.say("%1 for %2", share.quantity, share.order);
    if (!share.copies.empty()) out += " (" + numbers_text(share.copies) + ")";
  }
  return out;
}

std::string blank_text(const CuttingRun& run, const RunBlank& blank, const Locale& locale) {
  std::string shares;
  for (const RunBlank::Share& share : blank.shares) {
    const RunKind& kind = run.kinds[static_cast<std::size_t>(share.kind)];
    shares += (shares.empty() ? "" : "; ") +
              locale.say("%1 for kind %2 (%3)",
                         kind.plan.quantity * static_cast<int>(share.layers.size()), kind.number,
                         layers_text(share.layers, locale));
  }
  const StraightCut side{blank.strip, blank.size, blank.length, blank.by_stop, {}};
  return locale.say("%1: %2", blank_size_text(run.cutter, side, locale), shares);
}

std::string moves_text(const CuttingRun& run, const RunStep& step) {
  const ToldPlan plan{kind_of(run, step.work.front()).plan, {}};
  std::vector<std::string> moved;
  if (step.guide_moves) {
    moved.push_back("guide " + guide_text(plan, step.settings));
  }
  if (step.spacers_change) {
    const Settings& s = step.settings;
    if (s.block) moved.push_back(block_text(plan, *s.block));
    if (s.arm_block) moved.push_back(arm_block_text(plan, *s.arm_block));
    if (!s.block && !s.arm_block) moved.push_back("spacers off");
  }
  if (step.near_stop_moves) moved.push_back("near stop " + near_stop_text(plan, step.settings));
  if (step.far_stop_moves) moved.push_back("far stop " + far_stop_text(plan, step.settings));
  if (moved.empty()) return "all stays as it is";
  std::string out = "set ";
  for (std::size_t i = 0; i < moved.size(); ++i) out += (i > 0 ? ", " : "") + moved[i];
  return out;
}

std::vector<std::string> cautions(const CuttingRun& run, const Locale& locale) {
  std::vector<std::string> out;
  if (run.mixed) {
    out.push_back(locale.say(
        "Set-ups of several kinds in turn: write the order on the back of every blank, and keep "
        "half-cut blanks flat with their fallouts in."));
  }
  for (const RunKind& kind : run.kinds) {
    const ToldPlan plan{kind.plan, locale};
    for (std::string caution : cautions(plan)) {
      if (run.kinds.size() > 1 && caution == blade_caution(plan)) {
        caution = locale.say("Kind %1: %2", kind.number, caution);
      }
      if (std::find(out.begin(), out.end(), caution) == out.end()) out.push_back(caution);
    }
  }
  return out;
}

void write_run(TextLines& out, const CuttingRun& run) {
  write_head(out, run);
  if (!run.blanks.empty()) {
    out.line("");
    out.line("BLANKS  straight blade, no backing sheet, guide and stops off");
  }
  for (const RunBlank& blank : run.blanks) out.wrapped("  [ ] ", blank_text(run, blank, {}));
  for (const RunStep& step : run.steps) {
    out.line("");
    out.wrapped("", "STEP " + std::to_string(step.number) + ": " + moves_text(run, step));
    for (const RunWork& work : step.work) write_work(out, run, work);
  }
  out.line("");
  write_cautions(out, cautions(run, {}));
}

std::string run_to_text(const CuttingRun& run) {
  TextLines out;
  write_run(out, run);
  return out.take();
}

}  // namespace mullion
