#include "cli/prices.h"

#include "cli/known_words.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/cuts/plan/plan.h"

namespace mullion::cli {
namespace {

// Of one piece, rounded up.
Result<int> planned_minutes(const Loaded& loaded, const std::string& cutter_file) {
  const Result<CutterProfile> cutter = cutter_for(cutter_file, loaded.job.scale.unit);
  if (!cutter) return tl::unexpected(cutter.error());
  PlanOptions options;
  options.quantity = loaded.job.quantity;
  const Result<CuttingPlan> plan = plan_cutting(loaded.mat, *cutter, options);
  if (!plan) return tl::unexpected(plan.error());
  const std::int64_t all = minutes(*plan);
  return static_cast<int>((all + loaded.job.quantity - 1) / loaded.job.quantity);
}

}  // namespace

void add_price_options(const Verb& verb, PriceOptions& options, bool required) {
  const Option book = verb.option("--prices", Takes::file, options.book,
                                  "The shop's price book; without it no price is shown")
                          .required(required);
  verb.option("--glazing", Takes::name, options.glazing,
              "Name of a glazing in the price book (default: its first)")
      .needs(book);
  verb.flag("--unglazed", options.unglazed, "The frame has no glazing").needs(book);
  verb.option("--cutter", Takes::file, options.cutter,
              "A cutter that comes with the program, or its profile file, for the minutes of "
              "the cutting plan")
      .known(cutter_names())
      .needs(book);
  verb.option("--minutes", options.minutes,
              "Minutes of labour for one piece, instead of those of the cutting plan")
      .between(0, 100'000)
      .needs(book);
}

Result<price::Estimate> estimate_for(const Loaded& loaded, const PriceOptions& options,
                                     const Locale& locale) {
  const Result<price::Book> book = price::read_book(options.book);
  if (!book) return tl::unexpected(book.error());
  price::Choices choices;
  choices.locale = locale;
  choices.glazing = options.glazing;
  choices.glazed = !options.unglazed;
  if (options.minutes >= 0) {
    choices.minutes = options.minutes;
  } else if (book->labour) {
    const Result<int> planned = planned_minutes(loaded, options.cutter);
    if (!planned) return tl::unexpected(planned.error());
    choices.minutes = *planned;
  }
  return price::estimate(loaded.job, cuts_of(loaded.mat), *book, choices);
}

}  // namespace mullion::cli
