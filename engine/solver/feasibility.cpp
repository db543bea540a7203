#include "engine/solver/feasibility.h"

#include <algorithm>
#include <functional>
#include <queue>

namespace mullion::solver {
namespace {

// Columns 0 .. n-1 are the variables (free); n + j is the slack of form j (at least zero, until the
// form is let go of). Every nonbasic column has the value zero. The basic column of the least
// number leaves, the nonbasic one of the least number enters, which is what ends the search (R. G.
// Bland, "New finite pivoting rules for the simplex method", Mathematics of Operations Research 2,
// 1977).
class Dictionary {
 public:
  Dictionary(const std::vector<Linear>& forms, int variables)
      : variables_(variables),
        columns_(static_cast<std::size_t>(variables) + forms.size()),
        users_(columns_.size()) {
    for (int v = 0; v < variables; ++v) at(v).is_free = true;
    int slack = variables;
    for (const Linear& form : forms) {
      at(slack).is_basic = true;
      at(slack).row = form;
      note_terms(slack, form);
      note_sign(slack);
      ++slack;
    }
  }

  // False at the first row that cannot be at least zero.
  bool is_feasible() { return infeasible_column() < 0; }

  // The same, but the forms that exclude each other are let go of, and named.
  std::vector<std::size_t> excluding_each_other() {
    std::vector<std::size_t> out;
    for (int column = infeasible_column(); column >= 0; column = infeasible_column()) {
      const auto let_go = [&](int slack) {
        at(slack).is_free = true;
        out.push_back(static_cast<std::size_t>(slack - variables_));
      };
      let_go(column);
      for (const Term& term : at(column).row.terms()) let_go(term.variable);
    }
    return out;
  }

 private:
  struct Column {
    bool is_free = false, is_basic = false;
    Linear row;  // of a basic one, over the nonbasic ones
  };

  Column& at(int column) { return columns_[static_cast<std::size_t>(column)]; }

  // Of a row below zero that nothing can help; -1 where there is none.
  int infeasible_column() {
    for (int leaving = negative(); leaving >= 0; leaving = negative()) {
      const int entering = column_that_can_help(at(leaving).row);
      if (entering < 0) return leaving;
      pivot(leaving, entering);
    }
    return -1;
  }

  bool is_negative(int column) {
    const Column& one = at(column);
    return one.is_basic && !one.is_free && one.row.constant().sign() < 0;
  }

  int negative() {
    while (!below_.empty() && !is_negative(below_.top())) below_.pop();
    return below_.empty() ? -1 : below_.top();
  }

  int column_that_can_help(const Linear& row) {
    for (const Term& term : row.terms()) {
      if (at(term.variable).is_free || term.coefficient.sign() > 0) return term.variable;
    }
    return -1;
  }

  void pivot(int leaving, int entering) {
    Linear row = std::move(at(leaving).row);
    at(leaving).is_basic = false;
    const Rational coefficient = row.coefficient(Variable{entering});
    row.add(Linear(Variable{leaving}), -1);
    row *= Rational(-1) / coefficient;  // now -entering + its value
    std::vector<int> users = std::move(users_[static_cast<std::size_t>(entering)]);
    users_[static_cast<std::size_t>(entering)].clear();
    std::sort(users.begin(), users.end());
    users.erase(std::unique(users.begin(), users.end()), users.end());
    for (const int column : users) {
      if (!at(column).is_basic) continue;
      Linear& other = at(column).row;
      const Rational share = other.coefficient(Variable{entering});
      if (share.is_zero()) continue;
      other.add(row, share);
      note_terms(column, row);
      note_sign(column);
    }
    row.add(Linear(Variable{entering}), 1);
    note_terms(entering, row);
    at(entering).is_basic = true;
    at(entering).row = std::move(row);
    note_sign(entering);
  }

  void note_terms(int column, const Linear& row) {
    for (const Term& term : row.terms()) {
      users_[static_cast<std::size_t>(term.variable)].push_back(column);
    }
  }

  void note_sign(int column) {
    if (is_negative(column)) below_.push(column);
  }

  int variables_;
  std::vector<Column> columns_;
  std::vector<std::vector<int>> users_;  // by column: rows that have it, and perhaps others
  std::priority_queue<int, std::vector<int>, std::greater<>> below_;  // zero, and perhaps others
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
