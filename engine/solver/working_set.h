#pragma once

// The inequalities that are looked at, on their way through the levels.

#include "engine/solver/rules.h"

namespace mullion::solver {

class WorkingSet {
 public:
  // `working` are numbers of inequalities of the rules, which must outlive this.
  WorkingSet(const Rules& rules, const std::vector<std::size_t>& working);

  // Puts those required by now and those wanted at this level into `out`, over the free variables
  // of the space, which is no larger than at any call before.
  void enter(int level, const Elimination& space, Level& out);

  // Those wanted at the level that it did not miss are required from now on.
  void leave(int level, const std::vector<bool>& missed);

  // Numbers of inequalities that did not hold at their level; what they lack is fixed.
  const std::vector<std::size_t>& missed() const { return missed_; }

 private:
  struct Entry {
    std::size_t number;
    Linear form;
  };

  const Rules* rules_;
  std::vector<Entry> required_, wanted_;
  std::vector<std::size_t> missed_;
};

// Adds to the sorted working set what the values break; false where they break nothing new.
bool extend(std::vector<std::size_t>& working, const Rules& rules,
            const std::vector<Rational>& values);

}  // namespace mullion::solver
