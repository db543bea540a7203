#include "render/bench/stage_steps.h"

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/scale_text.h"
#include "engine/cuts/sheet/words.h"
#include "render/bench/board_svg.h"
#include "render/cutsheet/headings.h"
#include "render/cutsheet/placement_words.h"

namespace mullion::bench {
namespace {

using Weight = Sentence::Weight;

constexpr std::size_t most_lines = 4;  // to draw, seen at one time

std::string number_of_cuts(const CuttingPlan& plan) {
  std::size_t count = 0;
  for (const Stage& stage : plan.stages) count += cuts_of(stage).size() + stage.skew_cuts.size();
  return std::to_string(count);
}

bool is_by_eye(const BevelCut& cut) {
  return cut.start.by != EndBy::stop || cut.end.by != EndBy::stop;
}

void say(Step& step, const std::string& text, const char* name, Weight weight = Weight::plain) {
  if (!text.empty()) step.sentences.push_back({text, name, weight});
}

}  // namespace

StageSteps::StageSteps(const ToldPlan& plan, const Stage& stage, const std::string& kind,
                       Steps& steps)
    : plan_(plan), stage_(stage), board_(cutsheet::board_picture(plan, stage, 0)), steps_(steps) {
  if (!kind.empty()) where_.push_back(kind);
  where_.push_back(stage_brief_text(stage, plan.locale));
}

Step StageSteps::step(Step::Kind kind, const std::string& heading) const {
  Step out;
  out.kind = kind;
  out.pieces = plan_.quantity;
  out.heading = heading;
  out.where = where_;
  return out;
}

void StageSteps::before(Settings& shown) {
  steps_.begin_group();
  prepare();
  for (const std::string& text : checks_at(plan_, stage_, 0)) check(text, {});
  if (plan_.way != Way::template_taped) lines_by_rule();
  lines_by_guide(shown);
}

// Gone through once where nothing is done to every board.
void StageSteps::prepare() {
  const Locale& locale = plan_.locale;
  Step out = step(Step::Kind::work, locale.say("Get ready"));
  const bool is_template = plan_.way == Way::template_taped && !stage_.pencil_lines.empty();
  const bool is_drawn = plan_.way != Way::template_taped && !markings_of(stage_).empty();
  if (!stage_.taped && !is_template && !is_drawn) out.pieces = 1;
  say(out, stage_text(plan_, stage_), "board", Weight::strong);
  say(out, prepare_text(plan_, stage_), "prepare");
  if (const std::string shift = shift_text(plan_, stage_); !shift.empty()) {
    say(out, locale.say(cutsheet::one_amount), "same");
    say(out, shift, "shift", Weight::large);
  }
  if (is_template) {
    say(out, locale.say("Tape the printed template of this layer on."), "template", Weight::strong);
  }
  if (const std::string blocks = outside_blocks_text(plan_, stage_); !blocks.empty()) {
    say(out, locale.say("Or, %1.", blocks), "instead", Weight::quiet);
  }
  steps_.add(out);
}

void StageSteps::check(const std::string& text, const Picture& picture) {
  Step out = step(Step::Kind::check, plan_.locale.say("Check measure"));
  out.once = true;
  say(out, text, "measure", Weight::large);
  out.picture = picture;
  steps_.add(out);
}

// A few lines at a time, all from one edge.
void StageSteps::lines_by_rule() {
  const Locale& locale = plan_.locale;
  const std::vector<Marking> markings = markings_of(stage_);
  for (std::size_t first = 0; first < markings.size();) {
    Step out = step(Step::Kind::work, locale.say("Pencil lines"));
    std::vector<int> lines;
    std::size_t i = first;
    for (; i < markings.size() && i < first + most_lines; ++i) {
      const Marking& marking = markings[i];
      if (marking.edge != markings[first].edge) break;
      out.dials.push_back(
          {openings_text(marking.openings, locale),
           locale.say("%1 from %2", rule_text(marking.distance, plan_.cutter.scale, locale),
                      std::string(1, letter(marking.edge)))});
      lines.insert(lines.end(), marking.lines.begin(), marking.lines.end());
    }
    first = i;
    say(out,
        locale.say(stage_.taped ? mark("Draw across the back, the rule at the top mat's edge.")
                                : mark("Draw across the back.")),
        "draw");
    out.picture = picture_of_lines(board_, lines);
    steps_.add(out);
  }
}

std::vector<Dial> StageSteps::guide_dials(const Settings& settings, const Settings& shown) const {
  std::vector<Dial> dials = {dials_of(plan_, settings, shown).front()};
  for (Dial& block : block_dials_of(plan_, settings, shown)) dials.push_back(std::move(block));
  return dials;
}

void StageSteps::lines_by_guide(Settings& shown) {
  const Locale& locale = plan_.locale;
  for (const MarkSetUp& set_up : stage_.marking) {
    steps_.begin_group();
    const Settings settings = settings_at(set_up.setting);
    for (const MarkPlacement& placement : set_up.placements) {
      Step out = step(Step::Kind::work, locale.say("Pencil line %1", placement.line));
      out.dials = guide_dials(settings, shown);
      say(out, cutsheet::lying_heading(plan_, {placement.edge, false, 0, {BevelCut()}}), "lie",
          Weight::strong);
      say(out, lay_text(plan_, placement.edge, placement.laid, placement.turns), "turn",
          Weight::strong);
      say(out,
          locale.say(plan_.cutter.line_from_rail
                         ? mark("Pencil along the rail's edge.")
                         : mark("Draw with the blade's point, hardly touching.")),
          "draw");
      out.picture = picture_of_stroke(board_, placement, settings);
      steps_.add(out);
      shown = settings;
    }
  }
}

void StageSteps::set_up(const SetUp& set_up, const std::string& name, const Settings& settings,
                        Settings& shown) {
  steps_.begin_group();
  for (const Placement& placement : set_up.placements) {
    for (const BevelCut& one : placement.cuts) {
      cut(name, placement, one, settings, shown);
      shown = settings;
      for (const std::string& text : checks_at(plan_, stage_, one.number)) {
        check(text, picture_after_cut(board_, placement, one, settings));
      }
    }
  }
}

void StageSteps::cut(const std::string& name, const Placement& placement, const BevelCut& cut,
                     const Settings& settings, const Settings& shown) {
  const Locale& locale = plan_.locale;
  Step out = step(Step::Kind::work, locale.say("Cut %1 of %2", cut.number, number_of_cuts(plan_)));
  out.where.push_back(name);
  out.dials = dials_of(plan_, settings, shown);
  for (Dial& block : block_dials_of(plan_, settings, shown)) {
    out.dials.insert(out.dials.begin() + 1, block);
  }
  if (cut.pencil > 0) {
    out.dials.insert(out.dials.begin() + 1,
                     {locale.say("pencil line"),
                      locale.say("%1 from %2", rule_text(cut.distance, plan_.cutter.scale, locale),
                                 std::string(1, letter(placement.edge)))});
  }
  const bool is_first = &cut == &placement.cuts.front();
  const bool is_moved = is_first && (placement.laid || placement.turns != 0);
  const Weight moved = is_moved ? Weight::strong : Weight::quiet;
  say(out, cutsheet::lying_heading(plan_, placement), "lie", moved);
  say(out,
      is_first ? lay_text(plan_, placement.edge, placement.laid, placement.turns)
               : turn_text(0, locale),
      "turn", moved);
  say(out, locale.say("%1, as seen from the front", cutsheet::line_name(cut, locale)), "cut");
  if (cut.pencil > 0) say(out, locale.say("Bring the line %1.", line_up_text(plan_)), "rail");
  say(out, brief_ends_text(plan_, stage_, cut), "ends");
  if (is_by_eye(cut)) say(out, by_eye_text(plan_, stage_), "eye");
  two_passes(out);
  out.picture = picture_of_cut(board_, placement, cut, settings);
  steps_.add(out);
}

void StageSteps::two_passes(Step& step) const {
  if (stage_.passes < 2) return;
  say(step, sentence_of(TwoPasses{stage_.layer}, plan_.cutter.scale.unit, plan_.locale), "passes");
}

void StageSteps::after(const Settings& shown) {
  steps_.begin_group();
  skew_cuts();
  curves();
  panels(shown);
  spacer();
  for (const std::string& text : checks_at(plan_, stage_, -1)) {
    check(text, picture_of_all(board_));
  }
}

void StageSteps::skew_cuts() {
  const Locale& locale = plan_.locale;
  for (const SkewCut& cut : stage_.skew_cuts) {
    Step out =
        step(Step::Kind::work, locale.say("Cut %1 of %2", cut.number, number_of_cuts(plan_)));
    out.dials = {{locale.say("edge A to the rail"), degrees_to_rail(cut) + "\xC2\xB0"}};
    say(out, skew_brief_text(plan_, stage_, cut), "skew", Weight::strong);
    say(out, locale.say("Bring the line %1.", line_up_text(plan_)), "rail");
    say(out, skew_marks_text(plan_, stage_), "marks");
    two_passes(out);
    out.picture = picture_of_skew_cut(board_, cut);
    steps_.add(out);
  }
}

void StageSteps::curves() {
  const std::vector<std::string> texts = curve_texts(plan_, stage_);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    Step out = step(Step::Kind::work, plan_.locale.say("Curve %1 of %2", i + 1, texts.size()));
    say(out, texts[i], "curve", Weight::strong);
    out.picture = picture_of_curve(board_, i);
    steps_.add(out);
  }
}

void StageSteps::panels(const Settings& shown) {
  for (const GrooveTrim& trim : stage_.trims) {
    Step out = step(Step::Kind::work, plan_.locale.say("V-grooves"));
    if (trim.guide) {
      out.dials = guide_dials(settings_at(*trim.guide), shown);
    }
    say(out, trim_text(plan_, trim), "trim", Weight::strong);
    steps_.add(out);
  }
}

void StageSteps::spacer() {
  for (const std::string& text : spacer_texts(plan_, stage_)) {
    Step out = step(Step::Kind::work, plan_.locale.say("Straight cut"));
    say(out, text, "spacer", Weight::large);
    steps_.add(out);
  }
}

}  // namespace mullion::bench
