#pragma once

// A plan's blanks packed into cheaper sheets: all of them, or those of a few of its sheets.

#include <atomic>
#include <cstdint>
#include <optional>
#include <random>
#include <vector>

#include "engine/sheets/nesting/beam.h"
#include "engine/sheets/nesting/every_division.h"
#include "engine/sheets/nesting/plan.h"

namespace mullion {

class FewerSheets {
 public:
  // The problem and the flag outlive this.
  FewerSheets(const NestingProblem& problem, const std::atomic<bool>* stop);

  // Every division of `wanted` among these sheets, where the blanks are few enough.
  Division divide(const std::vector<int>& wanted, const std::vector<int>& sheets, double least_area,
                  std::vector<CutSheet>& found);

  // A packing of all of `wanted` into these sheets by beams of that width, if one is found before
  // that effort is spent.
  std::optional<std::vector<CutSheet>> pack(const std::vector<int>& wanted, std::vector<int> sheets,
                                            std::size_t width, std::int64_t most_effort);

  // As much of `wanted` as the beams find room for in these sheets; where only the whole is of use,
  // what cannot become it is not looked at.
  std::vector<CutSheet> pack_most(const std::vector<int>& wanted, std::vector<int> sheets,
                                  std::size_t width, bool whole, std::int64_t most_effort);

  // The plan with some of its sheets, chosen at random, for cheaper ones, if that is found.
  std::optional<NestingPlan> regrouped(const NestingPlan& plan, std::size_t width,
                                       std::mt19937& random, std::int64_t most_effort);

  // All patterns of the beams since the last call.
  std::vector<CutSheet> patterns();

  std::int64_t effort() const { return effort_; }  // so far, in cells of a value table

 private:
  double area(int stock) const;
  std::vector<Packing> packings(const std::vector<int>& wanted, const std::vector<int>& sheets,
                                std::size_t width, bool whole, std::int64_t most_effort) const;
  std::vector<std::size_t> wasteful_first(const NestingPlan& plan, std::mt19937& random) const;
  // The sheets without the one that can best be spared, or with a cheaper one in its place, of
  // which more are on hand.
  std::optional<std::vector<int>> cheaper(const std::vector<int>& sheets,
                                          const std::vector<int>& on_hand, double needed) const;

  const NestingProblem& problem_;
  const std::atomic<bool>* stop_;
  std::vector<CutSheet> patterns_;
  std::int64_t effort_ = 0;
};

}  // namespace mullion
