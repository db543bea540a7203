#include "cli/prices.h"

namespace mullion::cli {

void add_price_options(CLI::App& verb, PriceOptions& options, bool required) {
  CLI::Option* book = verb.add_option("--prices", options.book,
                                      "The shop's price book; without it no price is shown")
                          ->required(required);
  verb.add_option("--glazing", options.glazing,
                  "Name of a glazing in the price book (default: its first)")
      ->needs(book);
  verb.add_flag("--unglazed", options.unglazed, "The frame has no glazing")->needs(book);
  verb.add_option("--minutes", options.minutes, "Minutes of labour for one piece")
      ->check(CLI::Range(0, 100'000))
      ->needs(book);
}

Result<price::Estimate> estimate_for(const Loaded& loaded, const PriceOptions& options) {
  const Result<price::Book> book = price::read_book(options.book);
  if (!book) return tl::unexpected(book.error());
  price::Choices choices;
  choices.glazing = options.glazing;
  choices.glazed = !options.unglazed;
  if (options.minutes >= 0) choices.minutes = options.minutes;
  return price::estimate(loaded.job, loaded.mat, *book, choices);
}

}  // namespace mullion::cli
