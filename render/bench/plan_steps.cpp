#include "render/bench/plan_steps.h"

#include <algorithm>

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/run_text.h"
#include "engine/cuts/sheet/words.h"
#include "render/bench/stage_steps.h"
#include "render/cutsheet/headings.h"

namespace mullion::bench {
namespace {

using Weight = Sentence::Weight;

// As many sentences as are read at one time.
constexpr std::size_t most_sentences = 4, most_letters = 400;

Step read_step(const std::string& heading) {
  Step out;
  out.kind = Step::Kind::read;
  out.heading = heading;
  return out;
}

void add_sentences(Steps& steps, const std::string& heading, const char* name,
                   const std::vector<std::string>& sentences) {
  std::size_t letters = 0;
  Step out = read_step(heading);
  for (const std::string& sentence : sentences) {
    const bool is_full =
        out.sentences.size() == most_sentences || letters + sentence.size() > most_letters;
    if (is_full && !out.sentences.empty()) {
      steps.add(out);
      out.sentences.clear();
      letters = 0;
    }
    out.sentences.push_back({sentence, name});
    letters += sentence.size();
  }
  if (!out.sentences.empty()) steps.add(out);
}

std::string cautions_heading(const Locale& locale) {
  return locale.say("Mind this first");
}

void add_keys(Steps& steps, const Locale& locale) {
  Step out = read_step(locale.say("This page"));
  const auto add = [&](const std::string& text, const char* name) {
    out.sentences.push_back({text, name});
  };
  add(locale.say("\u201CNext\u201D ticks what is done and goes on; so do the space bar, Enter, the "
                 "arrow keys "
                 "and a foot pedal."),
      "keys");
  add(locale.say(
          "\u201CBack\u201D leaves the ticks as they are; touch a tick to set it or take it away."),
      "keys");
  add(locale.say("Ticks are kept in this browser for this plan alone; another plan starts afresh."),
      "kept");
  steps.add(out);
}

struct Blank {
  StraightCut side;
  std::string text;
  int copies = 1;
};

void add_blank_steps(Steps& steps, const std::vector<Blank>& blanks, const CutterProfile& cutter,
                     const Locale& locale) {
  for (std::size_t i = 0; i < blanks.size(); ++i) {
    Step out;
    out.heading = locale.say("Blank cut %1 of %2", i + 1, blanks.size());
    out.dials = {blank_dial(cutter, blanks[i].side, locale)};
    out.sentences = {{blanks[i].text, "blank", Weight::strong}};
    if (blanks[i].copies > 1) {
      out.sentences.push_back(
          {locale.say("%1 of each", blanks[i].copies), "copies", Weight::strong});
    }
    out.sentences.push_back({locale.say(cutsheet::blanks_title), "blade"});
    steps.add(out);
  }
}

void add_gauge_step(Steps& steps, const ToldPlan& plan) {
  const std::string text = gauges_text(plan);
  if (text.empty()) return;
  Step out;
  out.heading = plan.locale.say("Get ready");
  out.sentences = {{text, "gauges", Weight::strong}};
  steps.add(out);
}

void add_end(Steps& steps, const Locale& locale) {
  steps.begin_group();
  steps.add(read_step(locale.say("All is cut.")));
}

}  // namespace

std::vector<Step> steps_of(const ToldPlan& plan) {
  const Locale& locale = plan.locale;
  Steps steps;
  add_sentences(steps, cautions_heading(locale), "caution", cautions(plan));
  add_sentences(steps, cutsheet::title_of(plan), "about",
                {cutsheet::summary_of(plan), how_boards_lie(plan.cutter, locale)});
  add_keys(steps, locale);
  std::vector<Blank> blanks;
  for (const StraightCut& side : plan.blanks) {
    blanks.push_back({side, blank_text(plan, side), plan.quantity});
  }
  add_blank_steps(steps, blanks, plan.cutter, locale);
  add_gauge_step(steps, plan);
  Settings shown;
  for (const Stage& stage : plan.stages) {
    StageSteps one(plan, stage, "", steps);
    one.before(shown);
    for (const SetUp& set_up : stage.set_ups) {
      one.set_up(set_up, locale.say("Set-up %1", set_up.number), set_up.settings, shown);
    }
    one.after(shown);
  }
  add_end(steps, locale);
  return steps.take();
}

std::vector<Step> steps_of(const CuttingRun& run, const Locale& locale) {
  Steps steps;
  add_sentences(steps, cautions_heading(locale), "caution", cautions(run, locale));
  std::vector<std::string> about = {cutsheet::summary_of(run, locale),
                                    how_boards_lie(run.cutter, locale)};
  std::vector<ToldPlan> plans;
  for (const RunKind& kind : run.kinds) {
    about.push_back(cutsheet::kind_line(run, kind, locale));
    plans.push_back({kind.plan, locale});
  }
  add_sentences(steps, cutsheet::title_of(run, locale), "about", about);
  add_keys(steps, locale);
  std::vector<Blank> blanks;
  for (const RunBlank& blank : run.blanks) {
    blanks.push_back({{blank.strip, blank.size, blank.length, blank.by_stop, {}},
                      blank_text(run, blank, locale)});
  }
  add_blank_steps(steps, blanks, run.cutter, locale);
  for (const ToldPlan& plan : plans) add_gauge_step(steps, plan);
  Settings shown;
  for (const RunStep& step : run.steps) {
    for (const RunWork& work : step.work) {
      const ToldPlan& plan = plans[static_cast<std::size_t>(work.kind)];
      const RunKind& kind = kind_of(run, work);
      const Stage& stage = stage_of(run, work);
      StageSteps one(plan, stage, locale.say("Kind %1: %2", kind.number, kind_text(kind, locale)),
                     steps);
      if (begins_stage(work)) one.before(shown);
      if (work.set_up >= 0) {
        one.set_up(laid_anew(stage, work), locale.say("Step %1", step.number), step.settings,
                   shown);
      }
      if (ends_stage(run, work)) one.after(shown);
    }
  }
  add_end(steps, locale);
  return steps.take();
}

}  // namespace mullion::bench
