#pragma once

// The best point on the grid, proved: branch and bound.

#include <vector>

#include "engine/solver/lattice.h"
#include "engine/solver/rules.h"

namespace mullion::solver {

// A form that has no other values on the grid than these.
struct GridForm {
  Linear form;
  Progression values;
};

struct GridMeasure {
  Linear form;
  Rational exact;
  int rank = 0;
};

// How good a point on the grid is; less is better, the first difference decides. First the weighted
// sum of squared violations of every level, then for every rank the measures' distances from their
// exact values, the largest first.
struct Cost {
  std::vector<Rational> levels;
  std::vector<std::vector<Rational>> ranks;

  friend bool operator<(const Cost& a, const Cost& b);
};

Cost cost_of(const Rules& rules, const std::vector<GridMeasure>& measures,
             const std::vector<Rational>& values);

struct GridOptimum {
  std::vector<Rational> values;  // by variable of the rules; empty: none was found
  bool proved = false;           // no point on the grid is better, or there is none
};

// Looks for a better point than `start`, which is one or empty. `rules` have no equations. A point
// is on the grid when every one of `forms` has one of its values; the last of them are those of
// `measures`, which are sorted by rising rank.
//
// A node of the search is a range for every form; its bound is the optimum off the grid (A. H. Land
// and A. G. Doig, "An automatic method of solving discrete programming problems", Econometrica 28,
// 1960). Forms are split in the order given. The search ends unproved after `most_nodes`.
GridOptimum search_grid(const Rules& rules, const std::vector<GridForm>& forms,
                        const std::vector<GridMeasure>& measures, std::vector<Rational> start,
                        int most_nodes);

}  // namespace mullion::solver
