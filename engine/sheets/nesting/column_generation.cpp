#include "engine/sheets/nesting/column_generation.h"

#include <gmpxx.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "engine/sheets/nesting/fill.h"

namespace mullion {
namespace {

constexpr std::size_t most_cells = 1'000'000;
// A full sheet is worth less than this: a safe distance from what PatternSearch takes.
constexpr double full_sheet_value = static_cast<double>(std::int64_t{1} << 47);
constexpr std::int64_t most_price_steps = 4'000'000;
// How far the prices are pulled from those of the programme to those of the best bound, which leap
// about less; and how much less far after a round that found nothing (P. Wentges, "Weighted
// Dantzig-Wolfe decomposition for linear mixed-integer programming", International Transactions in
// Operational Research 4, 1997).
constexpr double most_pull = 0.75;
constexpr double pull_given_up = 0.25;

std::vector<std::optional<double>> limits_of(const NestingProblem& problem) {
  std::vector<std::optional<double>> limits;
  for (const StockKind& kind : problem.stock) {
    limits.push_back(kind.on_hand ? std::optional<double>(*kind.on_hand) : std::nullopt);
  }
  return limits;
}

double area(Length width, Length height) {
  return static_cast<double>(width.ticks()) * static_cast<double>(height.ticks());
}

std::int64_t whole_above(const mpq_class& number) {
  mpz_class result;
  mpz_cdiv_q(result.get_mpz_t(), number.get_num_mpz_t(), number.get_den_mpz_t());
  return result.fits_slong_p() ? result.get_si() : 0;
}

}  // namespace

ColumnGeneration::ColumnGeneration(const NestingProblem& problem,
                                   const std::vector<double>& penalties,
                                   const std::atomic<bool>* stop)
    : problem_(problem),
      stop_(stop),
      program_({problem.demands.begin(), problem.demands.end()}, limits_of(problem), penalties),
      values_(problem.blanks.size(), 0) {
  for (const double penalty : penalties) tolerance_ = std::max(tolerance_, 1e-9 * penalty);
  for (std::size_t s = 0; s < problem.stock.size(); ++s) {
    const StockKind& kind = problem.stock[s];
    searches_.emplace_back(kind.width, kind.height, problem.limits, problem.blanks, most_cells);
    for (std::size_t i = 0; i < problem.blanks.size(); ++i) {
      std::vector<std::int64_t> alone(problem.blanks.size(), 0);
      alone[i] = 1;
      Pattern pattern = searches_.back().within(kind.width, kind.height, alone).find(alone).pattern;
      add(static_cast<int>(s), std::move(pattern));
    }
  }
}

void ColumnGeneration::add(int stock, Pattern pattern) {
  PatternColumn column{stock, counts_of(pattern, problem_.blanks.size()), std::move(pattern)};
  CoveringColumn entry;
  entry.cost = static_cast<double>(problem_.stock[static_cast<std::size_t>(stock)].price);
  entry.stock = stock;
  for (std::size_t i = 0; i < column.counts.size(); ++i) {
    if (column.counts[i] > 0) entry.covers.emplace_back(static_cast<int>(i), column.counts[i]);
  }
  if (entry.covers.empty()) return;
  program_.add(entry);
  columns_.push_back(std::move(column));
}

void ColumnGeneration::take_values(const std::vector<double>& prices) {
  double densest = 1e-9;
  for (const StockKind& kind : problem_.stock) {
    for (std::size_t i = 0; i < problem_.blanks.size(); ++i) {
      const BlankSize& blank = problem_.blanks[i];
      densest = std::max(
          densest, prices[i] * area(kind.width, kind.height) / area(blank.width, blank.height));
    }
  }
  int exponent = 0;  // a power of two, so that what is computed with it is exact
  std::frexp(full_sheet_value / densest, &exponent);
  value_scale_ = std::ldexp(1.0, exponent - 1);
  for (std::size_t i = 0; i < values_.size(); ++i) {
    values_[i] = static_cast<std::int64_t>(std::max(prices[i], 0.0) * value_scale_);
  }
}

// What the sheet gains by the pattern at the programme's own prices.
double ColumnGeneration::gain(const Pattern& pattern, std::size_t stock, double rent) const {
  double sum = rent - static_cast<double>(problem_.stock[stock].price);
  const std::vector<int> counts = counts_of(pattern, problem_.blanks.size());
  for (std::size_t i = 0; i < counts.size(); ++i) sum += counts[i] * program_.duals()[i];
  return sum;
}

bool ColumnGeneration::price_patterns(std::vector<std::int64_t>& worth) {
  worth.clear();
  bool added = false;
  std::size_t row = problem_.blanks.size();
  for (std::size_t s = 0; s < searches_.size(); ++s) {
    const double rent = problem_.stock[s].on_hand ? program_.duals()[row++] : 0.0;
    if (stop_ && *stop_) return false;
    effort_ += searches_[s].effort();
    BestPattern best = searches_[s].find(values_);
    worth.push_back(best.bound);
    if (gain(best.pattern, s, rent) <= tolerance_) continue;
    add(static_cast<int>(s), std::move(best.pattern));
    added = true;
  }
  return added;
}

bool ColumnGeneration::too_much_wanted(const std::vector<std::int64_t>& worth,
                                       const std::vector<int>& demands,
                                       const std::vector<int>& on_hand) const {
  mpz_class wanted = 0, held = 0;
  for (std::size_t i = 0; i < values_.size(); ++i) {
    wanted += mpz_class(values_[i]) * mpz_class(demands[i]);
  }
  for (std::size_t s = 0; s < worth.size(); ++s)
    held += mpz_class(worth[s]) * mpz_class(on_hand[s]);
  return wanted > held;
}

// Every sheet of kind s holds blanks worth at most `worth`. Where that is more than its price, all
// values are lowered until it is not; kinds of which few are on hand may stay worth more than they
// cost, and what those few can gain is taken off.
ColumnGeneration::FairPrices ColumnGeneration::raise_bound(const std::vector<std::int64_t>& worth) {
  const mpq_class scale(value_scale_);
  mpq_class factor = 1;
  for (std::size_t s = 0; s < worth.size(); ++s) {
    if (problem_.stock[s].on_hand || worth[s] == 0) continue;
    const mpq_class fair = mpq_class(problem_.stock[s].price) * scale / mpq_class(worth[s]);
    factor = std::min(factor, fair);
  }
  mpq_class sum = 0;
  for (std::size_t i = 0; i < values_.size(); ++i) {
    sum += factor * mpq_class(values_[i]) * mpq_class(problem_.demands[i]);
  }
  for (std::size_t s = 0; s < worth.size(); ++s) {
    if (!problem_.stock[s].on_hand) continue;
    const mpq_class gain =
        factor * mpq_class(worth[s]) - mpq_class(problem_.stock[s].price) * scale;
    if (gain > 0) sum -= gain * mpq_class(*problem_.stock[s].on_hand);
  }
  std::vector<std::int64_t> prices;
  for (const StockKind& kind : problem_.stock) prices.push_back(kind.price);
  const std::int64_t bound = raised_to_sum_of_prices(whole_above(sum / scale), prices);
  bound_ = std::max(bound_, bound);
  return {mpq_class(sum / scale).get_d(), factor.get_d()};
}

void ColumnGeneration::solve(const std::vector<int>& demands, const std::vector<int>& on_hand,
                             int most_rounds, std::int64_t most_effort) {
  program_.set_right_sides({demands.begin(), demands.end()}, {on_hand.begin(), on_hand.end()});
  const bool whole_problem = demands == problem_.demands;
  const std::int64_t end = effort() + most_effort;
  std::vector<std::int64_t> worth;
  std::vector<double> centre;  // the prices that gave the best bound
  double best_bound = 0;
  double pull = most_pull;
  impossible_ = false;
  program_.solve();
  for (int round = 0; round < most_rounds && effort() < end; ++round) {
    std::vector<double> prices = program_.duals();
    const bool pulled = !centre.empty() && pull > 0;
    for (std::size_t i = 0; pulled && i < centre.size(); ++i) {
      prices[i] += pull * (centre[i] - prices[i]);
    }
    take_values(prices);
    const bool added = price_patterns(worth);
    if (worth.size() < searches_.size()) break;  // stopped
    if (whole_problem) {
      const FairPrices fair = raise_bound(worth);
      if (fair.bound > best_bound) {
        best_bound = fair.bound;
        centre.assign(prices.begin(), prices.begin() + static_cast<std::ptrdiff_t>(values_.size()));
        for (double& price : centre) price *= fair.factor;
      }
    }
    impossible_ = too_much_wanted(worth, demands, on_hand);
    if (impossible_ || (!added && !pulled)) break;
    pull = added ? most_pull : pull - pull_given_up;
    if (added) program_.solve();
  }
  take_values(program_.duals());
  amounts_ = program_.amounts();
}

std::int64_t raised_to_sum_of_prices(std::int64_t cost, std::vector<std::int64_t> prices) {
  std::int64_t step = 0;
  for (const std::int64_t price : prices) step = std::gcd(step, price);
  if (step == 0 || cost <= 0) return cost;
  const std::int64_t least = (cost + step - 1) / step;
  const std::int64_t dearest = *std::max_element(prices.begin(), prices.end()) / step;
  if (least + dearest > most_price_steps) return least * step;
  std::vector<char> reached(static_cast<std::size_t>(least + dearest) + 1, 0);
  reached[0] = 1;
  for (std::size_t sum = 0; sum < reached.size(); ++sum) {
    if (!reached[sum]) continue;
    if (static_cast<std::int64_t>(sum) >= least) return static_cast<std::int64_t>(sum) * step;
    for (const std::int64_t price : prices) {
      const std::size_t next = sum + static_cast<std::size_t>(price / step);
      if (price > 0 && next < reached.size()) reached[next] = 1;
    }
  }
  return least * step;
}

}  // namespace mullion
