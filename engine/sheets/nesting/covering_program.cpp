#include "engine/sheets/nesting/covering_program.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mullion {
namespace {

constexpr double tiny = 1e-9;
constexpr int pivots_between_refreshes = 64;

}  // namespace

CoveringProgram::CoveringProgram(std::vector<double> demands,
                                 const std::vector<std::optional<double>>& limits,
                                 const std::vector<double>& penalties)
    : demands_(demands.size()), rhs_(std::move(demands)) {
  for (const std::optional<double>& limit : limits) {
    stock_row_.push_back(limit ? static_cast<int>(rhs_.size()) : -1);
    if (limit) rhs_.push_back(*limit);
  }
  for (int row = 0; row < rows(); ++row) {  // the first basis: uncovered demand, unused stock
    const bool demand = row < static_cast<int>(demands_);
    const double penalty = demand ? penalties[static_cast<std::size_t>(row)] : 0.0;
    dearest_penalty_ = std::max(dearest_penalty_, penalty);
    columns_.push_back({penalty, {{row, 1.0}}});
  }
  for (int row = 0; row < static_cast<int>(demands_); ++row) {
    columns_.push_back({0.0, {{row, -1.0}}});  // more than was asked for
  }
  slacks_ = columns_.size();
}

int CoveringProgram::add(const CoveringColumn& column) {
  Column entry{column.cost, {}};
  for (const auto& [demand, count] : column.covers) entry.entries.emplace_back(demand, count);
  const int stock = stock_row_.at(static_cast<std::size_t>(column.stock));
  if (stock >= 0) entry.entries.emplace_back(stock, 1.0);
  columns_.push_back(std::move(entry));
  return static_cast<int>(columns_.size() - slacks_) - 1;
}

void CoveringProgram::set_right_sides(const std::vector<double>& demands,
                                      const std::vector<double>& limits) {
  std::copy(demands.begin(), demands.end(), rhs_.begin());
  for (std::size_t stock = 0; stock < stock_row_.size(); ++stock) {
    if (stock_row_[stock] >= 0) rhs_[static_cast<std::size_t>(stock_row_[stock])] = limits[stock];
  }
  basis_.clear();
}

void CoveringProgram::start() {
  const std::size_t m = rhs_.size();
  basis_.resize(m);
  inverse_.assign(m * m, 0.0);
  for (int row = 0; row < rows(); ++row) {
    basis_[static_cast<std::size_t>(row)] = row;
    inverse(row, row) = 1.0;
  }
  basic_ = rhs_;
}

void CoveringProgram::price() {
  duals_.assign(rhs_.size(), 0.0);
  for (int row = 0; row < rows(); ++row) {
    const double cost =
        columns_[static_cast<std::size_t>(basis_[static_cast<std::size_t>(row)])].cost;
    if (cost == 0.0) continue;
    for (int k = 0; k < rows(); ++k) duals_[static_cast<std::size_t>(k)] += cost * inverse(row, k);
  }
}

int CoveringProgram::entering(bool first_will_do) const {
  int best = -1;
  double least = -tiny * dearest_penalty_;
  for (std::size_t j = 0; j < columns_.size(); ++j) {
    double reduced = columns_[j].cost;
    for (const auto& [row, entry] : columns_[j].entries) {
      reduced -= duals_[static_cast<std::size_t>(row)] * entry;
    }
    if (reduced >= least) continue;
    best = static_cast<int>(j);
    least = reduced;
    if (first_will_do) break;
  }
  return best;
}

std::vector<double> CoveringProgram::direction(const Column& column) const {
  std::vector<double> step(rhs_.size(), 0.0);
  for (int row = 0; row < rows(); ++row) {
    for (const auto& [k, entry] : column.entries) {
      step[static_cast<std::size_t>(row)] += inverse(row, k) * entry;
    }
  }
  return step;
}

int CoveringProgram::leaving(const std::vector<double>& step) const {
  int best = -1;
  double least = 0;
  for (std::size_t row = 0; row < step.size(); ++row) {
    if (step[row] <= tiny) continue;
    const double ratio = basic_[row] / step[row];
    const bool tie = best >= 0 && std::abs(ratio - least) <= tiny;
    if (best < 0 || ratio < least - tiny ||
        (tie && basis_[row] < basis_[static_cast<std::size_t>(best)])) {
      best = static_cast<int>(row);
      least = ratio;
    }
  }
  return best;
}

void CoveringProgram::pivot(int row, int column, const std::vector<double>& step) {
  const double pivot = step[static_cast<std::size_t>(row)];
  const double amount = basic_[static_cast<std::size_t>(row)] / pivot;
  for (int k = 0; k < rows(); ++k) inverse(row, k) /= pivot;
  for (int other = 0; other < rows(); ++other) {
    const double factor = step[static_cast<std::size_t>(other)];
    if (other == row || factor == 0.0) continue;
    for (int k = 0; k < rows(); ++k) inverse(other, k) -= factor * inverse(row, k);
    double& basic = basic_[static_cast<std::size_t>(other)];
    basic = std::max(basic - factor * amount, 0.0);
  }
  basic_[static_cast<std::size_t>(row)] = amount;
  basis_[static_cast<std::size_t>(row)] = column;
}

// Computes the amounts anew from the inverse, so that errors do not pile up.
void CoveringProgram::refresh() {
  for (int row = 0; row < rows(); ++row) {
    double sum = 0;
    for (int k = 0; k < rows(); ++k) sum += inverse(row, k) * rhs_[static_cast<std::size_t>(k)];
    basic_[static_cast<std::size_t>(row)] = std::max(sum, 0.0);
  }
}

void CoveringProgram::solve() {
  if (basis_.empty()) start();
  const int patience = 20 * rows() + 200;
  for (int round = 0; round < 4 * patience; ++round) {
    price();
    const int column = entering(round > patience);
    if (column < 0) return;
    const std::vector<double> step = direction(columns_[static_cast<std::size_t>(column)]);
    const int row = leaving(step);
    if (row < 0) return;
    pivot(row, column, step);
    if (round % pivots_between_refreshes == pivots_between_refreshes - 1) refresh();
  }
}

std::vector<double> CoveringProgram::amounts() const {
  std::vector<double> amounts(columns_.size() - slacks_, 0.0);
  for (std::size_t row = 0; row < basis_.size(); ++row) {
    const auto column = static_cast<std::size_t>(basis_[row]);
    if (column >= slacks_) amounts[column - slacks_] = basic_[row];
  }
  return amounts;
}

}  // namespace mullion
