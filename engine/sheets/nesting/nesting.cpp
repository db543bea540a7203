#include "engine/sheets/nesting/nesting.h"

#include <algorithm>
#include <random>
#include <stdexcept>
#include <utility>

#include "engine/sheets/nesting/column_generation.h"
#include "engine/sheets/nesting/combinations.h"
#include "engine/sheets/nesting/plan.h"
#include "engine/sheets/nesting/planner.h"
#include "engine/sheets/nesting/tidy.h"

namespace mullion {
namespace {

// Shares of the effort.
constexpr double effort_at_first = 0.2;
constexpr double effort_for_packing = 0.6;
constexpr double effort_for_offcuts = 0.2;
constexpr int most_idle_rounds = 1000;
constexpr std::size_t most_combinations = 300;
constexpr int rounds_to_prove = 100;

void refuse_nonsense(const NestingProblem& problem) {
  bool sound = problem.blanks.size() == problem.demands.size();
  for (const int demand : problem.demands) sound = sound && demand >= 0;
  for (const StockKind& kind : problem.stock) {
    sound = sound && kind.price >= 0 && kind.on_hand.value_or(0) >= 0;
  }
  if (!sound) throw std::invalid_argument("demands, prices and stock are not negative");
}

// What it costs to leave a blank out, in terms of the dearest sheet: more than to make it.
constexpr double penalty = 1000;

std::vector<double> penalties(const NestingProblem& problem) {
  std::int64_t dearest = 1;
  for (const StockKind& kind : problem.stock) dearest = std::max(dearest, kind.price);
  return std::vector<double>(problem.blanks.size(), penalty * static_cast<double>(dearest));
}

// The same problem with sheets that cost nothing, of which only so many are there.
NestingProblem with_free_stock(NestingProblem problem) {
  for (StockKind& kind : problem.stock) {
    kind.price = 0;
    kind.on_hand = kind.on_hand.value_or(0);
  }
  return problem;
}

class Nester {
 public:
  Nester(const NestingProblem& problem, const NestingOptions& options)
      : problem_(problem),
        options_(options),
        free_(with_free_stock(problem)),
        relaxation_(problem, penalties(problem), options.stop),
        planner_(problem, relaxation_) {}

  Nesting run() {
    NestingPlan greedy = planner_.greedy();
    for (const CutSheet& sheet : greedy.sheets) relaxation_.add(sheet.stock, sheet.pattern);
    best_ = planner_.rounded(relaxation_, empty_plan(problem_), options_.effort);
    best_score_ = score(best_, problem_);
    if (const PlanScore found = score(greedy, problem_); found < best_score_) {
      best_ = std::move(greedy);
      best_score_ = found;
    }
    bound_ = relaxation_.bound();
    improve(effort_at_first);
    try_cheaper_stock();
    improve(effort_for_offcuts);
    if (!stopped()) planner_.compact(best_);
    for (CutSheet& sheet : best_.sheets) {
      if (!stopped()) sheet.pattern = laid_anew(sheet.pattern, problem_.blanks, problem_.limits);
    }
    Nesting result;
    result.cost = best_score_.cost;
    result.bound = bound_;
    result.missing = best_.wanted;
    result.sheets = std::move(best_.sheets);
    std::stable_sort(result.sheets.begin(), result.sheets.end(),
                     [](const CutSheet& a, const CutSheet& b) { return a.stock < b.stock; });
    return result;
  }

 private:
  bool stopped() const { return options_.stop && *options_.stop; }
  std::int64_t effort() const {
    return planner_.effort() + relaxation_.effort() + (packing_ ? packing_->effort() : 0);
  }

  std::int64_t effort_for(double share) const {
    return static_cast<std::int64_t>(share * static_cast<double>(options_.effort));
  }
  std::int64_t effort_after(double share) const { return effort() + effort_for(share); }

  // Plans sheets anew for a share of the effort, or until there is nothing to gain.
  void improve(double share) { improve(best_, best_score_, share, false); }

  void improve(NestingPlan& plan, PlanScore& plan_score, double share, bool until_complete) {
    const std::int64_t end = effort_after(share);
    std::mt19937 random(1);
    for (int idle = 0; idle < most_idle_rounds && effort() < end && !stopped(); ++idle) {
      if (until_complete && plan_score.missing == 0) break;
      NestingPlan next = planner_.replanned(plan, random);
      const PlanScore found = score(next, problem_);
      if (found < plan_score) {
        plan = std::move(next);
        plan_score = found;
        idle = 0;
      }
      report();
    }
  }

  // Goes through the combinations of sheets that would be cheaper, cheapest first: each is proved
  // too small, which raises the bound, or made a plan of, which ends the search, or left open.
  void try_cheaper_stock() {
    if (best_score_.missing > 0 || best_score_.cost <= bound_) return;
    const auto cheaper = stock_combinations(problem_, bound_, best_score_.cost,
                                            planner_.total_area(), most_combinations);
    if (!cheaper) return;
    packing_.emplace(free_, planner_.areas(), options_.stop);
    for (const PatternColumn& column : relaxation_.columns()) {
      packing_->add(column.stock, column.pattern);
    }
    bool open = false;
    const std::int64_t end = effort_after(effort_for_packing);
    for (const StockCombination& combination : *cheaper) {
      if (stopped() || effort() > end) return;
      if (!open) bound_ = std::max(bound_, combination.cost);
      packing_->solve(problem_.demands, combination.counts, rounds_to_prove, end - effort());
      if (packing_->impossible()) continue;
      open = true;
      if (pack_into(combination)) return;
    }
    if (!open) bound_ = best_score_.cost;
  }

  bool pack_into(const StockCombination& combination) {
    NestingPlan plan = empty_plan(problem_);
    plan.on_hand = combination.counts;
    plan = planner_.rounded(*packing_, std::move(plan), effort_for(effort_for_packing / 4));
    PlanScore found = score(plan, problem_);
    improve(plan, found, effort_for_packing / 4, true);
    if (found.missing > 0) return false;
    const NestingPlan all = empty_plan(problem_);
    for (std::size_t s = 0; s < plan.on_hand.size(); ++s) {
      plan.on_hand[s] += all.on_hand[s] - combination.counts[s];
    }
    best_ = std::move(plan);
    best_score_ = found;
    return true;
  }

  void report() const {
    if (!options_.report) return;
    options_.report(
        {best_score_.cost, bound_,
         std::min(1.0, static_cast<double>(effort()) / static_cast<double>(options_.effort))});
  }

  const NestingProblem& problem_;
  const NestingOptions& options_;
  NestingProblem free_;
  ColumnGeneration relaxation_;
  std::optional<ColumnGeneration> packing_;
  Planner planner_;
  NestingPlan best_;
  PlanScore best_score_;
  std::int64_t bound_ = 0;
};

}  // namespace

Nesting nest(const NestingProblem& problem, const NestingOptions& options) {
  refuse_nonsense(problem);
  return Nester(problem, options).run();
}

}  // namespace mullion
