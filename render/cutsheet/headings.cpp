#include "render/cutsheet/headings.h"

#include "engine/cuts/sheet/run_text.h"
#include "engine/cuts/sheet/words.h"

namespace mullion::cutsheet {

std::string title_of(const ToldPlan& plan) {
  const Locale& locale = plan.locale;
  const std::string out = plan.reference.empty() ? locale.say("Cutting plan")
                                                 : locale.say("Cutting plan %1", plan.reference);
  return plan.title.empty() ? out : locale.say("%1: %2", out, plan.title);
}

std::string summary_of(const ToldPlan& plan) {
  const Scale& scale = plan.cutter.scale;
  const Locale& locale = plan.locale;
  return locale.say(
      "%1, %2 x %3. %4. %5",
      plan.quantity == 1 ? locale.say("1 mat") : locale.say("%1 mats alike", plan.quantity),
      locale.described(plan.outer.width(), scale), locale.described(plan.outer.height(), scale),
      plan.cutter.name, chosen_text(plan, locale));
}

std::string title_of(const CuttingRun& run, const Locale& locale) {
  return locale.say("Run of %1 of %2", locale.plural(mats_in(run), "%1 mat", "%1 mats"),
                    locale.plural(run.kinds.size(), "%1 kind", "%1 kinds"));
}

std::string summary_of(const CuttingRun& run, const Locale& locale) {
  return locale.say("%1; %2, kind by kind %3. Mats with the same settings are cut together.",
                    run.cutter.name, duration_text(run.seconds, locale),
                    duration_text(run.alone, locale));
}

std::string kind_line(const CuttingRun& run, const RunKind& kind, const Locale& locale) {
  const Scale& scale = run.cutter.scale;
  return locale.say("Kind %1: %2, %3 x %4, cut with %5: %6", kind.number,
                    locale.plural(kind.plan.quantity, "%1 mat", "%1 mats"),
                    locale.described(kind.plan.outer.width(), scale),
                    locale.described(kind.plan.outer.height(), scale),
                    locale.say(name_of(kind.plan.way)), kind_text(kind, locale));
}

}  // namespace mullion::cutsheet
