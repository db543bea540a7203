#pragma once

// A batch of equations on their way through elimination: which row is the shortest, which rows use
// a variable.

#include <functional>
#include <queue>
#include <utility>
#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

class Batch {
 public:
  // Variables from `pivot_limit` on are never chosen as pivots.
  Batch(std::vector<Linear> rows, int pivot_limit, int variable_count);

  // Takes the shortest row out and returns its number, or -1 when none is left.
  int take_shortest();
  const Linear& row(int number) const { return rows_[static_cast<std::size_t>(number)]; }

  // The term of the row whose variable stands in the fewest rows, or null.
  const Term* best_pivot(int number) const;

  // Puts `value` in the place of the variable in all rows that are left.
  void substitute(int variable, const Linear& value);

 private:
  using Entry = std::pair<std::size_t, int>;  // length, number; outdated entries are skipped

  void note(int number, const Linear& form);

  std::vector<Linear> rows_;
  int pivot_limit_;
  std::vector<std::vector<int>> users_;  // by variable: rows that may hold it
  std::vector<bool> taken_;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue_;
};

}  // namespace mullion::solver
