#pragma once

// The two ways in which plans are made: rounding a relaxation, and planning a few sheets of a plan
// anew.

#include <random>

#include "engine/sheets/nesting/column_generation.h"
#include "engine/sheets/nesting/plan.h"

namespace mullion {

class Planner {
 public:
  // The problem and the searches, one for each kind of stock, outlive this.
  Planner(const NestingProblem& problem, const ColumnGeneration& searches);

  // Fills one sheet after the other with as much area as it holds.
  NestingPlan greedy();

  // Takes the whole numbers of the relaxation's solution, then its largest fraction, and solves
  // again for what is left, until nothing is left or no sheet is. Once `most_effort` is spent on
  // the first solution, or as much on the others, the patterns found so far must do.
  NestingPlan rounded(ColumnGeneration& relaxation, NestingPlan plan, std::int64_t most_effort);

  // `plan` with up to four of its sheets planned anew for no more than they cost; `plan` itself
  // where that fails. Blanks that no sheet held so far are taken in where they fit.
  NestingPlan replanned(const NestingPlan& plan, std::mt19937& random);

  // Cuts the same blanks from each sheet so that a larger off-cut is left, where that is possible.
  void compact(NestingPlan& plan);

  double total_area() const;  // of all blanks, in square millimetres
  const std::vector<double>& areas() const { return exact_areas_; }
  std::int64_t effort() const { return effort_; }  // so far

 private:
  bool take_whole_amounts(const ColumnGeneration& relaxation, NestingPlan& plan) const;
  bool take_largest_fraction(const ColumnGeneration& relaxation, NestingPlan& plan);
  bool finish_with_one_sheet(NestingPlan& plan);
  bool fill_any_sheet(NestingPlan& plan);
  bool fill(NestingPlan& plan, int stock, const std::vector<std::int64_t>& values);
  std::vector<std::int64_t> shaken_values(std::mt19937& random) const;
  int stock_within(std::int64_t budget, const NestingPlan& plan, std::mt19937& random) const;

  const NestingProblem& problem_;
  const ColumnGeneration& searches_;
  std::vector<double> exact_areas_;
  std::vector<std::int64_t> areas_;
  std::vector<int> cheapest_first_;  // kinds of stock
  std::int64_t effort_ = 0;
};

}  // namespace mullion
