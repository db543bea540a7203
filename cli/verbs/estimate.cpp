#include <memory>

#include "cli/answer.h"
#include "cli/language.h"
#include "cli/prices.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job;
  PriceOptions prices;
  bool costs = false;
  Locale locale;
  Answer answer{"estimate"};
};

int make_estimate(const Options& options) {
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return options.answer.fail(loaded.error());
  const Locale locale = options.answer.is_json() ? Locale() : options.locale;
  const auto estimate = estimate_for(*loaded, options.prices, locale);
  if (!estimate) return options.answer.fail(estimate.error());
  return options.answer.give(
      [&] {
        return options.costs ? price::cost_sheet_text(*estimate, locale)
                             : price::customer_text(*estimate, locale);
      },
      [&] { return estimate_json(*estimate, options.costs); });
}

}  // namespace

void add_estimate(CommandLine& program) {
  const Verb verb = program.verb("estimate", "Price a job by the shop's own price book");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  add_price_options(verb, options->prices, true);
  verb.flag("--costs", options->costs,
            "The shop's own cost sheet, with the reckoning of every line, instead of the "
            "customer's estimate");
  add_language_option(verb, options->locale);
  options->answer.add_option(verb);
  verb.runs([options] { return make_estimate(*options); });
}

}  // namespace mullion::cli
