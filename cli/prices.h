#pragma once

// Options that ask for a price, and the estimate they give.

#include <CLI/CLI.hpp>
#include <memory>
#include <string>

#include "cli/load.h"
#include "engine/price/estimate.h"

namespace mullion::cli {

struct PriceOptions {
  std::string book;  // empty: no price
  std::string glazing;
  bool unglazed = false;
  int minutes = -1;  // negative: labour is not charged
};

void add_price_options(CLI::App& verb, PriceOptions& options, bool required);

Result<price::Estimate> estimate_for(const Loaded& loaded, const PriceOptions& options);

}  // namespace mullion::cli
