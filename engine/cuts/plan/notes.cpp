#include "engine/cuts/plan/notes.h"

#include <algorithm>

namespace mullion {
namespace {

class Notes {
 public:
  Notes(const CuttingPlan& plan, const Cuts& cuts) : plan_(plan), cuts_(cuts) {}

  std::vector<PlanNote> find() {
    for (const Stage& stage : plan_.stages) look_at(stage);
    look_at_freehand();
    look_at_blanks();
    const Length longest = plan_.cutter.longest_cut;
    if (!plan_.cutter.reach && cuts_.farthest > longest) {
      notes_.push_back(ReachUnknown{cuts_.farthest});
    }
    look_at_rounding();
    return std::move(notes_);
  }

 private:
  void look_at(const Stage& stage) {
    if (stage.kind == StageKind::spacer) return;
    const bool is_under_mat = stage.layer > 1 && stage.kind == StageKind::layer;
    if (is_under_mat && !stage.shift && !stage.set_ups.empty()) {
      notes_.push_back(UnevenShift{stage.layer});
    }
    if (stage.kind == StageKind::groove) return;
    if (stage.passes > 1) notes_.push_back(TwoPasses{stage.layer});
    if (!plan_.cutter.deepest_cut && stage.thickness > plan_.cutter.over_cuts.back().thickness) {
      notes_.push_back(DepthUnknown{stage.layer, stage.thickness});
    }
  }

  void look_at_freehand() {
    int freehand = 0, slanting = 0;
    for (const Stage& stage : plan_.stages) {
      for (const BevelCut* cut : mullion::cuts_of(stage)) freehand += cut->pencil > 0 ? 1 : 0;
      slanting += static_cast<int>(stage.skew_cuts.size());
    }
    if (freehand > 0 && plan_.cutter.guide) {
      notes_.push_back(BeyondGuide{freehand, plan_.cutter.guide->most});
    }
    if (freehand + slanting > 0 && !plan_.cutter.line_from_rail) {
      notes_.push_back(RailLineUnknown{freehand + slanting});
    }
  }

  void look_at_blanks() {
    const auto long_side = std::find_if(
        plan_.blanks.begin(), plan_.blanks.end(),
        [&](const StraightCut& side) { return side.length > plan_.cutter.longest_cut; });
    if (long_side != plan_.blanks.end()) notes_.push_back(LongBlank{long_side->length});
  }

  void round(Length true_distance, Length zero) {
    const Length exact = true_distance + zero;
    const Length off = shown_on(plan_.cutter.scale, true_distance, zero) - exact;
    most_ = std::max(most_, off < Length() ? -off : off);
  }

  void look_at_rounding() {
    const CutterProfile& cutter = plan_.cutter;
    for (const StraightCut& side : plan_.blanks) {
      round(side.size + half_rounded_down(cutter.kerf), side.by_stop ? cutter.arm_zero : Length());
    }
    for (const Length gauge : plan_.gauges) {
      round(gauge, Length());
      round(gauge + half_rounded_down(cutter.kerf), cutter.arm_zero);
    }
    for (const Stage& stage : plan_.stages) {
      for (const PencilLine& line : stage.pencil_lines) round(line.distance, Length());
      for (const MarkSetUp& set_up : stage.marking) round(set_up.setting.guide, cutter.guide->zero);
      for (const SetUp& set_up : stage.set_ups) {
        const Settings& s = set_up.settings;
        if (s.guide) round(*s.guide, cutter.guide->zero);
        if (s.near_stop) round(*s.near_stop, cutter.near_stop->zero);
        if (s.far_stop) round(*s.far_stop, cutter.far_stop->zero);
        if (s.block) round(s.block->width, Length());
        if (s.arm_block) round(*s.arm_block, Length());
      }
      look_at_marks(stage);
      look_at_curves(stage);
    }
    if (most_ == Length()) return;
    notes_.push_back(RoundedSettings{plan_.job_unit, setting_step(cutter.scale), most_});
  }

  void look_at_marks(const Stage& stage) {
    for (const BevelCut* cut : mullion::cuts_of(stage)) {
      for (const CutEnd* end : {&cut->start, &cut->end}) {
        if (end->by != EndBy::stop) round(end->past, Length());
      }
    }
    for (const SkewCut& cut : stage.skew_cuts) {
      for (const Length length :
           {cut.from.x, cut.from.y, cut.to.x, cut.to.y, cut.from_past, cut.to_past}) {
        round(length, Length());
      }
    }
  }

  void look_at_curves(const Stage& stage) {
    for (const CurveCut& curve : stage.curves) {
      if (curve.kind != CurveKind::oval) continue;
      const Rect& b = curve.back;
      for (const Length twice : {b.width(), b.height(), b.left + b.right, b.top + b.bottom}) {
        round(half_rounded_down(twice), Length());
      }
    }
  }

  const CuttingPlan& plan_;
  const Cuts& cuts_;
  std::vector<PlanNote> notes_;
  Length most_;
};

}  // namespace

std::vector<PlanNote> notes_on(const CuttingPlan& plan, const Cuts& cuts) {
  return Notes(plan, cuts).find();
}

std::string_view code_of(const PlanNote& note) {
  constexpr std::string_view codes[] = {"cutting-uneven-shift",  "cutting-beyond-guide",
                                        "cutting-long-blank",    "cutting-rounded",
                                        "cutting-reach-unknown", "cutting-depth-unknown",
                                        "cutting-rail-unknown",  "cutting-two-passes"};
  return codes[note.index()];
}

}  // namespace mullion
