#pragma once

// The linear relaxation of a nesting problem, solved over all patterns without listing them.
//
// Fractions of a pattern may be bought. Each round solves the programme over the patterns found so
// far and asks the dynamic programme for a pattern that is worth more than its sheet at the present
// prices of blanks.

#include <vector>

#include "engine/sheets/nesting/covering_program.h"
#include "engine/sheets/nesting/nesting.h"

namespace mullion {

struct PatternColumn {
  int stock = -1;
  std::vector<int> counts;
  Pattern pattern;
};

class ColumnGeneration {
 public:
  // Each penalty is what it costs to leave out one blank of that size. The problem and the flag
  // outlive this.
  ColumnGeneration(const NestingProblem& problem, const std::vector<double>& penalties,
                   const std::atomic<bool>* stop);

  // Solves for these demands and this stock on hand, by at most so many rounds, the last of which
  // begins before so much effort is spent.
  void solve(const std::vector<int>& demands, const std::vector<int>& on_hand, int most_rounds,
             std::int64_t most_effort);

  // Of the last solution.
  const std::vector<double>& amounts() const { return amounts_; }
  // What a blank of each size is worth, as whole numbers that PatternSearch takes.
  const std::vector<std::int64_t>& values() const { return values_; }

  const std::vector<PatternColumn>& columns() const { return columns_; }
  void add(int stock, Pattern pattern);

  const PatternSearch& search(int stock) const {
    return searches_[static_cast<std::size_t>(stock)];
  }
  std::int64_t effort() const { return effort_ + program_.effort(); }

  // The best bound for the demands and the stock of the problem, from all rounds so far: no plan
  // without gaps costs less.
  std::int64_t bound() const { return bound_; }

  // True when the last solve has proved that these sheets cannot hold these blanks, whatever they
  // cost.
  bool impossible() const { return impossible_; }

 private:
  // At which no sheet is worth more than it costs.
  struct FairPrices {
    double bound = 0;
    double factor = 1;  // by which the present ones are lowered
  };
  double gain(const Pattern& pattern, std::size_t stock, double rent) const;
  bool price_patterns(std::vector<std::int64_t>& worth);
  void take_values(const std::vector<double>& prices);
  FairPrices raise_bound(const std::vector<std::int64_t>& worth);
  bool too_much_wanted(const std::vector<std::int64_t>& worth, const std::vector<int>& demands,
                       const std::vector<int>& on_hand) const;

  const NestingProblem& problem_;
  const std::atomic<bool>* stop_;
  std::vector<PatternSearch> searches_;
  CoveringProgram program_;
  std::vector<PatternColumn> columns_;
  std::vector<double> amounts_;
  std::vector<std::int64_t> values_;
  double value_scale_ = 1;  // values per unit of price, a power of two
  double tolerance_ = 0;    // of a gain, in units of price
  bool impossible_ = false;
  std::int64_t effort_ = 0;
  std::int64_t bound_ = 0;
};

// The least sum of prices, each taken any number of times, that is not below `cost`; `cost` itself
// where the prices are too many steps apart to try.
std::int64_t raised_to_sum_of_prices(std::int64_t cost, std::vector<std::int64_t> prices);

}  // namespace mullion
