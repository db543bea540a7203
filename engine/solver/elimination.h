#pragma once

// A set of linear equations, solved as they come.
//
// Every equation that says something new expresses one of its variables by the others; all such
// expressions are kept free of solved variables (reduced row echelon form), so that reducing a
// form once leaves only free variables. Exact.

#include <optional>
#include <vector>

#include "engine/solver/linear.h"

namespace mullion::solver {

class Elimination {
 public:
  explicit Elimination(int variable_count);

  enum class Outcome {
    solved,        // expressed a variable
    redundant,     // followed from the equations before it
    inconsistent,  // contradicts them; nothing was changed
  };
  // Adds the equation form = 0.
  Outcome insert(const Linear& form);

  // The same form over free variables alone.
  Linear reduce(const Linear& form) const;

  bool is_free(int variable) const { return !expression_[index(variable)]; }
  int variable_count() const { return static_cast<int>(expression_.size()); }
  int add_variable();

  // All variables where the free ones have the values given for them; those of solved variables in
  // `free_values` are not looked at.
  std::vector<Rational> complete(const std::vector<Rational>& free_values) const;

 private:
  static std::size_t index(int variable) { return static_cast<std::size_t>(variable); }
  int choose_pivot(const Linear& form) const;

  std::vector<std::optional<Linear>> expression_;  // by variable: what it equals; nothing: free
  std::vector<std::vector<int>> users_;  // by free variable: solved ones that may contain it
};

// Sums terms that may name a variable more than once, in any order.
Linear collect(std::vector<Linear::Term> terms, Rational constant);

}  // namespace mullion::solver
