#pragma once

// The inequalities that are looked at, on their way through the levels.

#include "engine/solver/rules.h"

namespace mullion::solver {

class WorkingSet {
 public:
  // `working` are numbers of inequalities of the rules, which must outlive this.
  WorkingSet(const Rules& rules, const std::vector<std::size_t>& working);

  // Puts those required by now and those wanted at this level into `out`.
  void enter(int level, Level& out) const;

  // Those wanted at the level that hold at its optimum are required from now on.
  void leave(int level, const LevelOptimum& optimum);

  bool is_empty() const { return required_.empty() && wanted_.empty(); }
  // Numbers of inequalities that did not hold at their level; what they lack is fixed.
  const std::vector<std::size_t>& missed() const { return missed_; }

 private:
  const Rules* rules_;
  std::vector<std::size_t> required_, wanted_, missed_;
};

// Adds to the sorted working set what the values break; false where they break nothing new.
bool extend(std::vector<std::size_t>& working, const Rules& rules,
            const std::vector<Rational>& values);

}  // namespace mullion::solver
