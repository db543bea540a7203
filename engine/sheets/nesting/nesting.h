#pragma once

// Many blanks out of many sheets of one board: guillotine cuts only, at the least cost.
//
// Exact lengths; prices are whole numbers of the smallest coin. The plan is found by column
// generation (P. C. Gilmore, R. E. Gomory, "Multistage cutting stock problems of two and more
// dimensions", Operations Research 13, 1965), by rounding its solution step by step, and by taking
// apart and planning anew a few sheets at a time; a greedy plan stands by. Where cheaper sheets may
// do, they are searched for as well: every division of a few blanks, and beams for many. The bound
// comes from the same linear programme, is derived by exact arithmetic (A. A. Farley, "A note on
// bounding a class of linear programming problems", Operations Research 38, 1990) and holds for
// every plan whatsoever. Of plans that cost the same, the one that leaves the more useful off-cuts
// is kept, then the one with fewer settings.

#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "engine/sheets/guillotine/best_pattern.h"

namespace mullion {

struct StockKind {
  Length width, height;        // what can be used of it
  std::int64_t price = 0;      // not negative
  std::optional<int> on_hand;  // nothing: as many as are wanted can be bought
};

struct NestingProblem {
  std::vector<BlankSize> blanks;
  std::vector<int> demands;  // one for each size of blank
  std::vector<StockKind> stock;
  CutLimits limits;
};

struct CutSheet {
  int stock = -1;  // index into the problem's stock
  Pattern pattern;
};

struct Nesting {
  std::vector<CutSheet> sheets;
  std::vector<int> missing;  // per size: what no sheet on hand holds
  std::int64_t cost = 0;
  std::int64_t bound = 0;  // no plan that makes every blank costs less
};

struct NestingProgress {
  std::int64_t cost = 0, bound = 0;  // of the best plan so far
  double done = 0;                   // 0 .. 1 of the effort
};

struct NestingOptions {
  // Cells of value tables that may be filled in search of better plans: a measure of time that is
  // the same on every machine.
  std::int64_t effort = 25'000'000;
  // How many times that effort is spent on a search for cheaper sheets where they may do. In all
  // about 10 s on a small machine.
  double patience = 4;
  const std::atomic<bool>* stop = nullptr;  // once true, the best plan so far is returned
  std::function<void(const NestingProgress&)> report;
};

// Throws std::invalid_argument for sizes that are not positive, and for negative numbers.
Nesting nest(const NestingProblem& problem, const NestingOptions& options = {});

// Common practice, no source: a piece that holds an 8 x 10 in mat is worth keeping.
inline constexpr Length shorter_side_of_offcut = inches(8);
inline constexpr Length longer_side_of_offcut = inches(10);

// How useful the off-cuts are: of each sheet the largest left-over rectangle that is worth keeping,
// the squares of their areas added up, in (1000 sq in)^2. One large rectangle counts for more than
// the same area in scraps.
double usefulness_of_offcuts(const std::vector<CutSheet>& sheets);

// How often the stop is set anew when the pattern is cut from its first cut to its last.
int stop_settings(const Pattern& pattern);

}  // namespace mullion
