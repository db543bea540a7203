#include "engine/solver/feasibility.h"

#include <algorithm>
#include <map>

namespace mullion::solver {
namespace {

// Columns 0 .. n-1 are the variables (free); n + j is the slack of form j (at least zero, until the
// form is let go of). Every nonbasic column has the value zero.
class Dictionary {
 public:
  Dictionary(const std::vector<Linear>& forms, int variables)
      : variables_(variables), is_free_(static_cast<std::size_t>(variables) + forms.size(), false) {
    std::fill_n(is_free_.begin(), variables, true);
    int slack = variables;
    for (const Linear& form : forms) rows_.emplace(slack++, form);
  }

  // False at the first row that cannot be at least zero.
  bool is_feasible() { return infeasible_column() < 0; }

  // The same, but the forms that exclude each other are let go of, and named.
  std::vector<std::size_t> excluding_each_other() {
    std::vector<std::size_t> out;
    for (int column = infeasible_column(); column >= 0; column = infeasible_column()) {
      const auto let_go = [&](int slack) {
        is_free_[static_cast<std::size_t>(slack)] = true;
        out.push_back(static_cast<std::size_t>(slack - variables_));
      };
      let_go(column);
      for (const Term& term : rows_.at(column).terms()) let_go(term.variable);
    }
    return out;
  }

 private:
  bool is_free(int column) const { return is_free_[static_cast<std::size_t>(column)]; }

  // Of a row below zero that nothing can help; -1 where there is none.
  int infeasible_column() {
    for (int leaving = negative(); leaving >= 0; leaving = negative()) {
      const int entering = column_that_can_help(rows_.at(leaving));
      if (entering < 0) return leaving;
      pivot(leaving, entering);
    }
    return -1;
  }

  int negative() const {
    for (const auto& [column, row] : rows_) {
      if (!is_free(column) && row.constant().sign() < 0) return column;
    }
    return -1;
  }

  int column_that_can_help(const Linear& row) const {
    for (const Term& term : row.terms()) {
      if (is_free(term.variable) || term.coefficient.sign() > 0) return term.variable;
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
  std::vector<bool> is_free_;   // by column
  std::map<int, Linear> rows_;  // by basic column
};

}  // namespace

std::vector<std::size_t> excluding_each_other(const std::vector<Linear>& forms,
                                              int variable_count) {
  return Dictionary(forms, variable_count).excluding_each_other();
}

bool can_be_at_least_zero(const std::vector<Linear>& forms, int variable_count) {
  return Dictionary(forms, variable_count).is_feasible();
}

}  // namespace mullion::solver
