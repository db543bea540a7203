#include "engine/sheets/nesting/planner.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include "engine/sheets/nesting/fill.h"

namespace mullion {
namespace {

constexpr int rounds_at_first = 5000;
constexpr int rounds_while_rounding = 6;
// Sheets that are used for more than this share leave no off-cut worth a search.
constexpr double fullest_compacted = 0.85;
// What the largest sheet is worth where areas count.
constexpr double largest_sheet_value = 1e6;
// Of copying and judging a plan, in cells of a value table.
constexpr std::int64_t effort_per_sheet = 200;

bool all_wanted(const std::vector<int>& counts, const std::vector<int>& wanted) {
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (counts[i] > wanted[i]) return false;
  }
  return true;
}

bool any_wanted(const std::vector<int>& counts, const std::vector<int>& wanted) {
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (counts[i] > 0 && wanted[i] > 0) return true;
  }
  return false;
}

}  // namespace

Planner::Planner(const NestingProblem& problem, const ColumnGeneration& searches)
    : problem_(problem), searches_(searches), cheapest_first_(problem.stock.size()) {
  double largest = 0;
  for (const StockKind& kind : problem.stock) {
    largest = std::max(largest, to_millimetres(kind.width) * to_millimetres(kind.height));
  }
  for (const BlankSize& blank : problem.blanks) {
    exact_areas_.push_back(to_millimetres(blank.width) * to_millimetres(blank.height));
    areas_.push_back(std::max<std::int64_t>(
        std::llround(exact_areas_.back() / largest * largest_sheet_value), 1));
  }
  std::iota(cheapest_first_.begin(), cheapest_first_.end(), 0);
  std::stable_sort(cheapest_first_.begin(), cheapest_first_.end(), [&problem](int a, int b) {
    return problem.stock[static_cast<std::size_t>(a)].price <
           problem.stock[static_cast<std::size_t>(b)].price;
  });
}

double Planner::total_area() const {
  return std::inner_product(exact_areas_.begin(), exact_areas_.end(), problem_.demands.begin(),
                            0.0);
}

NestingPlan Planner::greedy() {
  NestingPlan plan = empty_plan(problem_);
  while (!plan.finished() && (finish_with_one_sheet(plan) || fill_any_sheet(plan))) {
  }
  return plan;
}

NestingPlan Planner::rounded(ColumnGeneration& relaxation, NestingPlan plan,
                             std::int64_t most_effort) {
  if (plan.finished()) return plan;
  relaxation.solve(plan.wanted, plan.on_hand, rounds_at_first, most_effort);
  const std::int64_t end = relaxation.effort() + most_effort;
  for (bool first = true; !plan.finished(); first = false) {
    if (!first) {
      relaxation.solve(plan.wanted, plan.on_hand, rounds_while_rounding, end - relaxation.effort());
    }
    if (take_whole_amounts(relaxation, plan)) continue;
    if (finish_with_one_sheet(plan)) continue;
    if (take_largest_fraction(relaxation, plan)) continue;
    // The values of the programme may be nothing for what is still wanted; areas never are.
    if (!fill_any_sheet(plan)) break;
  }
  return plan;
}

bool Planner::take_whole_amounts(const ColumnGeneration& relaxation, NestingPlan& plan) const {
  bool any = false;
  for (std::size_t j = 0; j < relaxation.amounts().size(); ++j) {
    const PatternColumn& column = relaxation.columns()[j];
    for (double left = relaxation.amounts()[j] + 1e-6; left >= 1; left -= 1) {
      if (plan.on_hand[static_cast<std::size_t>(column.stock)] == 0) break;
      if (all_wanted(column.counts, plan.wanted)) {
        cut(plan, {column.stock, column.pattern});
      } else if (any_wanted(column.counts, plan.wanted)) {
        // The programme may cut more than is asked for: what it buys is still the cheapest.
        cut(plan, {column.stock,
                   wanted_part(searches_.search(column.stock), column.pattern, plan.wanted)});
      } else {
        break;
      }
      any = true;
    }
  }
  return any;
}

bool Planner::take_largest_fraction(const ColumnGeneration& relaxation, NestingPlan& plan) {
  int stock = -1;
  double largest = 1e-6;
  std::size_t chosen = 0;
  for (std::size_t j = 0; j < relaxation.amounts().size(); ++j) {
    const PatternColumn& column = relaxation.columns()[j];
    if (plan.on_hand[static_cast<std::size_t>(column.stock)] == 0) continue;
    if (relaxation.amounts()[j] <= largest) continue;
    largest = relaxation.amounts()[j];
    stock = column.stock;
    chosen = j;
  }
  if (stock < 0) return fill_any_sheet(plan);
  if (all_wanted(relaxation.columns()[chosen].counts, plan.wanted)) {
    cut(plan, {stock, relaxation.columns()[chosen].pattern});
    return true;
  }
  return fill(plan, stock, relaxation.values());
}

bool Planner::fill_any_sheet(NestingPlan& plan) {
  for (std::size_t s = 0; s < problem_.stock.size(); ++s) {
    if (plan.on_hand[s] > 0 && fill(plan, static_cast<int>(s), areas_)) return true;
  }
  return false;
}

bool Planner::fill(NestingPlan& plan, int stock, const std::vector<std::int64_t>& values) {
  Fill sheet = fill_sheet(searches_.search(stock), values, plan.wanted, effort_);
  if (sheet.value == 0) return false;
  cut(plan, {stock, std::move(sheet.pattern)});
  return true;
}

bool Planner::finish_with_one_sheet(NestingPlan& plan) {
  const double needed =
      std::inner_product(plan.wanted.begin(), plan.wanted.end(), exact_areas_.begin(), 0.0);
  for (const int stock : cheapest_first_) {
    const StockKind& kind = problem_.stock[static_cast<std::size_t>(stock)];
    if (plan.on_hand[static_cast<std::size_t>(stock)] == 0) continue;
    if (to_millimetres(kind.width) * to_millimetres(kind.height) < 0.999 * needed) continue;
    Fill sheet = fill_sheet(searches_.search(stock), areas_, plan.wanted, effort_);
    if (sheet.counts != plan.wanted) continue;
    cut(plan, {stock, std::move(sheet.pattern)});
    return true;
  }
  return false;
}

NestingPlan Planner::replanned(const NestingPlan& from, std::mt19937& random) {
  NestingPlan plan = from;
  effort_ += effort_per_sheet * static_cast<std::int64_t>(plan.sheets.size());
  const std::size_t count = 1 + random() % 4;
  std::int64_t budget = from.finished() ? 0 : std::numeric_limits<std::int64_t>::max() / 2;
  for (std::size_t i = 0; i < count && !plan.sheets.empty(); ++i) {
    const std::size_t sheet = random() % plan.sheets.size();
    budget += problem_.stock[static_cast<std::size_t>(plan.sheets[sheet].stock)].price;
    undo(plan, sheet);
  }
  const std::vector<std::int64_t> values = shaken_values(random);
  bool in_one = random() % 2 == 0;
  while (!plan.finished()) {
    if (in_one && finish_with_one_sheet(plan)) continue;
    in_one = true;
    const int stock = stock_within(budget, plan, random);
    if (stock < 0 || !fill(plan, stock, values)) break;
    budget -= problem_.stock[static_cast<std::size_t>(stock)].price;
  }
  return plan;
}

void Planner::compact(NestingPlan& plan) {
  for (CutSheet& sheet : plan.sheets) {
    const StockKind& kind = problem_.stock[static_cast<std::size_t>(sheet.stock)];
    const PatternSearch& search = searches_.search(sheet.stock);
    const std::vector<int> counts = counts_of(sheet.pattern, plan.wanted.size());
    const double used =
        std::inner_product(counts.begin(), counts.end(), exact_areas_.begin(), 0.0) /
        (to_millimetres(kind.width) * to_millimetres(kind.height));
    if (used > fullest_compacted) continue;
    for (const bool narrower : {true, false}) {
      // Looks for the least part of the sheet that still holds all blanks.
      double enough = 1.0;
      for (double step = (1.0 - used) / 2; step > 0.01; step /= 2) {
        const auto part = [&](Length side) {
          return Length::from_ticks(
              static_cast<std::int64_t>(static_cast<double>(side.ticks()) * (enough - step)));
        };
        const PatternSearch smaller =
            search.within(narrower ? part(kind.width) : kind.width,
                          narrower ? kind.height : part(kind.height), areas_);
        Fill fill = fill_sheet(smaller, areas_, counts, effort_);
        if (fill.counts != counts) continue;
        enough -= step;
        CutSheet candidate{sheet.stock, search.pushed_together(fill.pattern)};
        if (usefulness_of_offcuts({candidate}) > usefulness_of_offcuts({sheet})) {
          sheet = std::move(candidate);
        }
      }
    }
  }
}

std::vector<std::int64_t> Planner::shaken_values(std::mt19937& random) const {
  const double spread = 0.1 * static_cast<double>(1 << random() % 5);
  const double power = 1.0 + static_cast<double>(random() % 30) / 100;
  std::vector<std::int64_t> values;
  for (const std::int64_t area : areas_) {
    const double noise = 1.0 + spread * static_cast<double>(random() % 1024) / 1024;
    values.push_back(std::max<std::int64_t>(
        std::llround(std::pow(static_cast<double>(area), power) * noise), 1));
  }
  return values;
}

int Planner::stock_within(std::int64_t budget, const NestingPlan& plan,
                          std::mt19937& random) const {
  std::vector<int> possible;
  for (std::size_t s = 0; s < problem_.stock.size(); ++s) {
    if (plan.on_hand[s] > 0 && problem_.stock[s].price <= budget) {
      possible.push_back(static_cast<int>(s));
    }
  }
  return possible.empty() ? -1 : possible[random() % possible.size()];
}

}  // namespace mullion
