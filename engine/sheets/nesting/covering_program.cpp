#include "engine/sheets/nesting/covering_program.h"

#include <algorithm>
#include <cmath>
#include <coin/ClpSimplex.hpp>

namespace mullion {
namespace {

// Clp's tolerances are absolute: the costs are scaled so that the dearest penalty is this.
constexpr double scaled_penalty = 1000;
constexpr int most_iterations_per_entry = 50;

double finite(double number) {
  return std::isfinite(number) ? number : 0.0;
}

}  // namespace

struct CoveringProgram::Solver {
  ClpSimplex simplex;
  double cost_scale = 1;
  int slacks = 0;  // columns that leave a demand uncovered; they come first
  bool sides_changed = true;
  std::int64_t effort = 0;
  // Columns that the programme does not have yet.
  std::vector<CoinBigIndex> starts{0};
  std::vector<int> rows;
  std::vector<double> entries, costs;

  void append(double cost) {
    costs.push_back(cost * cost_scale);
    starts.push_back(static_cast<CoinBigIndex>(rows.size()));
  }

  void take_columns() {
    if (costs.empty()) return;
    const int before = simplex.numberColumns();
    const std::vector<double> least(costs.size(), 0.0), most(costs.size(), COIN_DBL_MAX);
    simplex.addColumns(static_cast<int>(costs.size()), least.data(), most.data(), costs.data(),
                       starts.data(), rows.data(), entries.data());
    for (int j = before; j < simplex.numberColumns(); ++j) {
      simplex.setColumnStatus(j, ClpSimplex::atLowerBound);
    }
    starts = {0};
    rows.clear();
    entries.clear();
    costs.clear();
  }

  void count_effort() {
    const std::int64_t entry_count = simplex.numberRows() + simplex.getNumElements();
    effort += (simplex.numberIterations() + 4) * entry_count;
  }
};

CoveringProgram::CoveringProgram(const std::vector<double>& demands,
                                 const std::vector<std::optional<double>>& limits,
                                 const std::vector<double>& penalties)
    : solver_(std::make_unique<Solver>()), demands_(demands.size()) {
  int rows = static_cast<int>(demands.size());
  for (const std::optional<double>& limit : limits) stock_row_.push_back(limit ? rows++ : -1);
  ClpSimplex& simplex = solver_->simplex;
  simplex.setLogLevel(0);
  simplex.resize(rows, 0);
  simplex.createStatus();
  for (std::size_t i = 0; i < demands.size(); ++i) {
    simplex.setRowBounds(static_cast<int>(i), demands[i], COIN_DBL_MAX);
  }
  for (std::size_t s = 0; s < limits.size(); ++s) {
    if (limits[s]) simplex.setRowBounds(stock_row_[s], -COIN_DBL_MAX, *limits[s]);
  }
  double dearest = 0;
  for (const double penalty : penalties) dearest = std::max(dearest, penalty);
  if (dearest > 0) solver_->cost_scale = scaled_penalty / dearest;
  for (std::size_t i = 0; i < demands.size(); ++i) {
    solver_->rows.push_back(static_cast<int>(i));
    solver_->entries.push_back(1.0);
    solver_->append(penalties[i]);
  }
  solver_->slacks = static_cast<int>(demands.size());
  duals_.assign(static_cast<std::size_t>(rows), 0.0);
}

CoveringProgram::~CoveringProgram() = default;
CoveringProgram::CoveringProgram(CoveringProgram&&) noexcept = default;
CoveringProgram& CoveringProgram::operator=(CoveringProgram&&) noexcept = default;

void CoveringProgram::add(const CoveringColumn& column) {
  for (const auto& [demand, count] : column.covers) {
    solver_->rows.push_back(demand);
    solver_->entries.push_back(count);
  }
  if (const int row = stock_row_.at(static_cast<std::size_t>(column.stock)); row >= 0) {
    solver_->rows.push_back(row);
    solver_->entries.push_back(1.0);
  }
  solver_->append(column.cost);
}

void CoveringProgram::set_right_sides(const std::vector<double>& demands,
                                      const std::vector<double>& limits) {
  for (std::size_t i = 0; i < demands_; ++i) {
    solver_->simplex.setRowLower(static_cast<int>(i), demands[i]);
  }
  for (std::size_t s = 0; s < stock_row_.size(); ++s) {
    if (stock_row_[s] >= 0) solver_->simplex.setRowUpper(stock_row_[s], limits[s]);
  }
  solver_->sides_changed = true;
}

void CoveringProgram::solve() {
  solver_->take_columns();
  ClpSimplex& simplex = solver_->simplex;
  simplex.setMaximumIterations(most_iterations_per_entry *
                               (simplex.numberRows() + simplex.numberColumns()));
  // New right-hand sides leave the last basis feasible for the dual method, new columns for the
  // primal one.
  if (solver_->sides_changed) {
    simplex.dual();
  } else {
    simplex.primal();
  }
  solver_->sides_changed = false;
  solver_->count_effort();
  if (simplex.status() != 0) {
    simplex.allSlackBasis(true);
    simplex.primal();
    solver_->count_effort();
  }
  const double* const prices = simplex.dualRowSolution();
  for (std::size_t row = 0; row < duals_.size(); ++row) {
    const double dual = finite(prices[row] / solver_->cost_scale);
    duals_[row] = row < demands_ ? std::max(dual, 0.0) : std::min(dual, 0.0);
  }
}

std::vector<double> CoveringProgram::amounts() const {
  const ClpSimplex& simplex = solver_->simplex;
  const double* const solution = simplex.primalColumnSolution();
  std::vector<double> amounts;
  for (int j = solver_->slacks; j < simplex.numberColumns(); ++j) {
    amounts.push_back(std::max(finite(solution[j]), 0.0));
  }
  amounts.resize(amounts.size() + solver_->costs.size(), 0.0);
  return amounts;
}

std::int64_t CoveringProgram::effort() const {
  return solver_->effort;
}

}  // namespace mullion
