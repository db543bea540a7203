#pragma once

// Options that ask for a price, and the estimate they give.

#include <memory>
#include <string>

#include "cli/load.h"
#include "engine/shop/estimate.h"

namespace mullion::cli {

struct PriceOptions {
  std::string book;  // empty: no price
  std::string glazing;
  bool unglazed = false;
  std::string cutter;  // id or profile file; empty: the default one
  int minutes = -1;    // of labour for one piece; negative: from the cutting plan
};

void add_price_options(const Verb& verb, PriceOptions& options, bool required);

Result<price::Estimate> estimate_for(const Loaded& loaded, const PriceOptions& options,
                                     const Locale& locale);

}  // namespace mullion::cli
