#pragma once

// Which variables hang together: two do when one form holds both.

#include <algorithm>
#include <numeric>
#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

class Partition {
 public:
  explicit Partition(int variable_count) : parent_(static_cast<std::size_t>(variable_count)) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }

  void join(const Linear& form) {
    for (const Term& term : form.terms()) {
      const int a = part_of(form.terms().front().variable), b = part_of(term.variable);
      // The smallest variable stands for the part, so its number does not depend on the order.
      parent_[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
    }
  }

  int part_of(int variable) {
    while (parent_[static_cast<std::size_t>(variable)] != variable) {
      int& parent = parent_[static_cast<std::size_t>(variable)];
      parent = parent_[static_cast<std::size_t>(parent)];
      variable = parent;
    }
    return variable;
  }
  // Of a form that is not constant.
  int part_of(const Linear& form) { return part_of(form.terms().front().variable); }

 private:
  std::vector<int> parent_;
};

}  // namespace mullion::solver
