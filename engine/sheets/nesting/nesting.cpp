#include "engine/sheets/nesting/nesting.h"

#include <algorithm>
#include <numeric>
#include <random>
#include <stdexcept>
#include <utility>

#include "engine/sheets/nesting/column_generation.h"
#include "engine/sheets/nesting/combinations.h"
#include "engine/sheets/nesting/fewer_sheets.h"
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
constexpr double effort_but_for_patience =
    2 + effort_at_first + effort_for_packing + effort_for_offcuts;
constexpr std::size_t first_beam = 30, last_beam = 10'000, beams_grow_by = 3;
constexpr std::size_t most_combinations_packed = 3;
constexpr int most_regrouped = 30;
constexpr std::size_t most_sheets_held = 100;

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
        planner_(problem, relaxation_),
        fewer_(problem, options.stop) {}

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
    hold_more();
    try_cheaper_stock();
    pack_cheaper_stock();
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
    return planner_.effort() + relaxation_.effort() + fewer_.effort() +
           (packing_ ? packing_->effort() : 0);
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
    const std::int64_t end = effort_after(effort_for_packing);
    for (const StockCombination& combination : *cheaper) {
      if (stopped() || effort() > end) {
        open_.push_back(combination);
        continue;
      }
      if (open_.empty()) bound_ = std::max(bound_, combination.cost);
      packing_->solve(problem_.demands, combination.counts, rounds_to_prove, end - effort());
      if (packing_->impossible()) continue;
      std::vector<CutSheet> sheets;
      const Division division = divide_all(combination, sheets);
      if (division == Division::impossible) continue;
      if (division == Division::found) return take(plan_of(std::move(sheets)));
      open_.push_back(combination);
      if (pack_into(combination)) return;
    }
    if (open_.empty()) bound_ = best_score_.cost;
  }

  Division divide_all(const StockCombination& combination, std::vector<CutSheet>& sheets) {
    return fewer_.divide(problem_.demands, sheets_of(combination), total_area(), sheets);
  }

  double total_area() const { return area_of(problem_.blanks, problem_.demands); }

  // No more sheets of a kind than there are blanks.
  std::vector<int> sheets_of(const StockCombination& combination) const {
    std::vector<int> sheets;
    const int blanks = std::accumulate(problem_.demands.begin(), problem_.demands.end(), 0);
    for (std::size_t s = 0; s < combination.counts.size(); ++s) {
      const int count = std::min(combination.counts[s], blanks);
      sheets.insert(sheets.end(), static_cast<std::size_t>(count), static_cast<int>(s));
    }
    return sheets;
  }

  void take(NestingPlan plan) {
    best_ = std::move(plan);
    best_score_ = score(best_, problem_);
  }

  // Packs the blanks into cheaper sheets by wider and wider beams: into those that cost little less
  // than the plan, and into a few of its sheets at a time.
  void pack_cheaper_stock() {
    if (best_score_.missing > 0) return;
    const std::int64_t end = effort_after(options_.patience);
    std::mt19937 random(2);
    for (std::size_t width = first_beam; width <= last_beam; width *= beams_grow_by) {
      std::size_t tried = 0;
      int idle = 0;
      while (best_score_.cost > bound_ && effort() < end && !stopped()) {
        drop_dearer();
        if (tried < std::min(open_.size(), most_combinations_packed)) {
          const StockCombination& combination = open_[open_.size() - ++tried];
          auto sheets =
              fewer_.pack(problem_.demands, sheets_of(combination), width, end - effort());
          if (sheets) {
            take(plan_of(std::move(*sheets)));
            tried = 0;
          }
        } else if (idle++ < most_regrouped) {
          if (auto plan = fewer_.regrouped(best_, width, random, end - effort())) {
            take(std::move(*plan));
            tried = 0;
            idle = 0;
          }
        } else {
          break;
        }
        report();
      }
      if (best_score_.cost <= bound_ || stopped()) break;
      round_with(fewer_.patterns());
      if (effort() >= end) break;
    }
  }

  // The linear programme puts together what different packings do best.
  void round_with(std::vector<CutSheet> patterns) {
    for (CutSheet& sheet : patterns) relaxation_.add(sheet.stock, std::move(sheet.pattern));
    NestingPlan plan =
        planner_.rounded(relaxation_, empty_plan(problem_), effort_for(effort_at_first));
    bound_ = std::max(bound_, relaxation_.bound());
    take_if_better(std::move(plan));
  }

  void drop_dearer() {
    std::erase_if(open_, [this](const StockCombination& combination) {
      return combination.cost >= best_score_.cost;
    });
  }

  // Where the sheets on hand do not hold all: a plan that leaves out less.
  void hold_more() {
    if (best_score_.missing == 0 || stopped()) return;
    std::vector<int> sheets;
    const int blanks = std::accumulate(problem_.demands.begin(), problem_.demands.end(), 0);
    for (std::size_t s = 0; s < problem_.stock.size(); ++s) {
      const int count = std::min(problem_.stock[s].on_hand.value_or(blanks), blanks);
      sheets.insert(sheets.end(), static_cast<std::size_t>(count), static_cast<int>(s));
    }
    if (sheets.empty() || sheets.size() > most_sheets_held) return;
    std::vector<CutSheet> held;
    const double least = total_area() - area_of(problem_.blanks, best_.wanted);
    if (fewer_.divide(problem_.demands, sheets, least, held) != Division::open) {
      if (!held.empty()) take_if_better(plan_of(std::move(held)));
      return;
    }
    const std::int64_t end = effort_after(options_.patience);
    for (std::size_t width = first_beam; width <= last_beam; width *= beams_grow_by) {
      if (best_score_.missing == 0 || effort() > end || stopped()) break;
      take_if_better(
          plan_of(fewer_.pack_most(problem_.demands, sheets, width, false, end - effort())));
      report();
    }
  }

  NestingPlan plan_of(std::vector<CutSheet> sheets) const {
    NestingPlan plan = empty_plan(problem_);
    for (CutSheet& sheet : sheets) cut(plan, std::move(sheet));
    return plan;
  }

  void take_if_better(NestingPlan plan) {
    const PlanScore found = score(plan, problem_);
    if (found >= best_score_) return;
    best_ = std::move(plan);
    best_score_ = found;
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
    options_.report({best_score_.cost, bound_,
                     std::min(1.0, static_cast<double>(effort()) /
                                       ((effort_but_for_patience + options_.patience) *
                                        static_cast<double>(options_.effort)))});
  }

  const NestingProblem& problem_;
  const NestingOptions& options_;
  NestingProblem free_;
  ColumnGeneration relaxation_;
  std::optional<ColumnGeneration> packing_;
  Planner planner_;
  FewerSheets fewer_;
  std::vector<StockCombination> open_;  // cheaper ones that may hold the blanks, cheapest first
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
