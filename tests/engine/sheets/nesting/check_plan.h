#pragma once

// Checks a nesting by its patterns alone: every blank is made or named as missing, every pattern
// can be cut, no more sheets are used than are on hand, and the cost is the sheets' prices.

#include <catch2/catch.hpp>

#include "engine/sheets/nesting/fill.h"
#include "engine/sheets/nesting/nesting.h"
#include "tests/engine/sheets/guillotine/cut_check.h"

inline void check_plan(const mullion::NestingProblem& problem, const mullion::Nesting& nesting) {
  std::vector<int> made = nesting.missing;
  std::vector<int> used(problem.stock.size(), 0);
  std::int64_t cost = 0;
  const std::vector<std::int64_t> ones(problem.blanks.size(), 1);
  for (const mullion::CutSheet& sheet : nesting.sheets) {
    const mullion::StockKind& kind = problem.stock.at(static_cast<std::size_t>(sheet.stock));
    REQUIRE(fault_in(sheet.pattern, kind.width, kind.height, problem.limits, problem.blanks) == "");
    REQUIRE(value_of(sheet.pattern, kind.width, kind.height, problem.limits.kerf, ones) > 0);
    const std::vector<int> counts = mullion::counts_of(sheet.pattern, made.size());
    for (std::size_t i = 0; i < counts.size(); ++i) made[i] += counts[i];
    ++used[static_cast<std::size_t>(sheet.stock)];
    cost += kind.price;
  }
  REQUIRE(made == problem.demands);
  REQUIRE(cost == nesting.cost);
  for (std::size_t s = 0; s < used.size(); ++s) {
    REQUIRE(used[s] <= problem.stock[s].on_hand.value_or(used[s]));
  }
}
