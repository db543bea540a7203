#include "engine/solver/feasibility.h"

#include <map>

namespace mullion::solver {
namespace {

// Columns 0 .. n-1 are the variables (free); n + j is the slack of form j (at least zero). Every
// nonbasic column has the value zero.
class Dictionary {
 public:
  Dictionary(const std::vector<Linear>& forms, int variables) : variables_(variables) {
    int slack = variables;
    for (const Linear& form : forms) rows_.emplace(slack++, form);
  }

  bool run() {
    for (int leaving = negative(); leaving >= 0; leaving = negative()) {
      const int entering = column_that_can_help(rows_.at(leaving));
      if (entering < 0) return false;
      pivot(leaving, entering);
    }
    return true;
  }

 private:
  int negative() const {
    for (const auto& [column, row] : rows_) {
      if (column >= variables_ && row.constant().sign() < 0) return column;
    }
    return -1;
  }

  int column_that_can_help(const Linear& row) const {
    for (const Term& term : row.terms()) {
      if (term.variable < variables_ || term.coefficient.sign() > 0) return term.variable;
    }
    return -1;
  }

  void pivot(int leaving, int entering) {
    Linear row = std::move(rows_.at(leaving));
    rows_.erase(leaving);
    const Rational coefficient = row.coefficient(Variable{entering});
    row.add(Linear(Variable{leaving}), -1);
    row *= Rational(-1) / coefficient;  // now -entering + its value
    for (auto& [column, other] : rows_) {
      const Rational share = other.coefficient(Variable{entering});
      if (!share.is_zero()) other.add(row, share);
    }
    row.add(Linear(Variable{entering}), 1);
    rows_.emplace(entering, std::move(row));
  }

  int variables_;
  std::map<int, Linear> rows_;  // by basic column
};

}  // namespace

bool can_be_at_least_zero(const std::vector<Linear>& forms, int variable_count) {
  return Dictionary(forms, variable_count).run();
}

}  // namespace mullion::solver
