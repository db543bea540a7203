#include "engine/solver/feasibility.h"

#include <map>

namespace mullion::solver {
namespace {

// Columns 0 .. n-1 are the variables' moves away from the start (free); n + j is the slack of
// inequality j (at least zero). Every nonbasic column has the value zero.
class Dictionary {
 public:
  Dictionary(const std::vector<Linear>& inequalities, const std::vector<Rational>& start)
      : inequalities_(inequalities), variables_(static_cast<int>(start.size())) {
    for (std::size_t j = 0; j < inequalities.size(); ++j) {
      rows_.emplace(variables_ + static_cast<int>(j),
                    Linear(inequalities[j].terms(), evaluate(inequalities[j], start)));
    }
  }

  tl::expected<std::vector<Rational>, InfeasibleRow> run() {
    for (int leaving = violated(); leaving >= 0; leaving = violated()) {
      const int entering = column_that_can_help(rows_.at(leaving));
      if (entering < 0) return tl::unexpected(infeasible(leaving));
      pivot(leaving, entering);
    }
    std::vector<Rational> moves(static_cast<std::size_t>(variables_));
    for (const auto& [column, row] : rows_) {
      if (column < variables_) moves[static_cast<std::size_t>(column)] = row.constant();
    }
    return moves;
  }

 private:
  int violated() const {
    for (const auto& [column, row] : rows_) {
      if (column >= variables_ && row.constant().sign() < 0) return column;
    }
    return -1;
  }

  int column_that_can_help(const Linear& row) const {
    for (const Linear::Term& term : row.terms()) {
      if (term.variable < variables_ || term.coefficient.sign() > 0) return term.variable;
    }
    return -1;
  }

  InfeasibleRow infeasible(int leaving) const {
    InfeasibleRow out;
    out.parts.push_back({static_cast<std::size_t>(leaving - variables_), 1});
    for (const Linear::Term& term : rows_.at(leaving).terms()) {
      out.parts.push_back(
          {static_cast<std::size_t>(term.variable - variables_), -term.coefficient});
    }
    return out;
  }

  void pivot(int leaving, int entering) {
    Linear row = rows_.at(leaving);
    rows_.erase(leaving);
    const Rational coefficient = row.coefficient(Variable{entering});
    row.add(Linear(Variable{entering}), -coefficient);
    row.add(Linear(Variable{leaving}), -1);
    row *= Rational(-1) / coefficient;
    for (auto& [column, other] : rows_) {
      const Rational share = other.coefficient(Variable{entering});
      if (share.is_zero()) continue;
      other.add(Linear(Variable{entering}), -share);
      other.add(row, share);
    }
    rows_.emplace(entering, std::move(row));
  }

  const std::vector<Linear>& inequalities_;
  int variables_;
  std::map<int, Linear> rows_;  // by basic column
};

}  // namespace

tl::expected<std::vector<Rational>, InfeasibleRow> find_feasible_point(
    const std::vector<Linear>& inequalities, const std::vector<Rational>& start) {
  auto moves = Dictionary(inequalities, start).run();
  if (!moves) return moves;
  for (std::size_t i = 0; i < start.size(); ++i) (*moves)[i] += start[i];
  return moves;
}

}  // namespace mullion::solver
