#pragma once

// A small linear programme: buy columns so that every demand is covered, at the least cost.
//
//   minimise   sum cost_j x_j
//   subject to sum a_ij x_j >= demand_i,   sum over the columns of stock s of x_j <= on hand_s
//
// Solved by the revised simplex method in floating point. Its answers are advice: a bound that is
// printed is derived from the duals by exact arithmetic elsewhere.

#include <optional>
#include <vector>

namespace mullion {

struct CoveringColumn {
  double cost = 0;
  int stock = -1;                              // index into the stocks' limits
  std::vector<std::pair<int, double>> covers;  // demand, how many of it
};

class CoveringProgram {
 public:
  // A limit of nothing means as many as are wanted. Each penalty is the cost of leaving one unit
  // of that demand uncovered.
  CoveringProgram(std::vector<double> demands, const std::vector<std::optional<double>>& limits,
                  const std::vector<double>& penalties);

  int add(const CoveringColumn& column);
  // New right-hand sides; those of stocks without a limit are not read.
  void set_right_sides(const std::vector<double>& demands, const std::vector<double>& limits);

  void solve();

  // Of the last solution.
  std::vector<double> amounts() const;                         // per column
  const std::vector<double>& duals() const { return duals_; }  // >= 0 demands, then <= 0 stocks

 private:
  struct Column {
    double cost = 0;
    std::vector<std::pair<int, double>> entries;  // row, coefficient
  };
  void start();
  void price();
  int entering(bool first_will_do) const;
  std::vector<double> direction(const Column& column) const;
  int leaving(const std::vector<double>& step) const;
  void pivot(int row, int column, const std::vector<double>& step);
  void refresh();
  double& inverse(int row, int column) {
    return inverse_[static_cast<std::size_t>(row) * rhs_.size() + static_cast<std::size_t>(column)];
  }
  double inverse(int row, int column) const {
    return inverse_[static_cast<std::size_t>(row) * rhs_.size() + static_cast<std::size_t>(column)];
  }
  int rows() const { return static_cast<int>(rhs_.size()); }

  std::size_t demands_;
  std::vector<int> stock_row_;   // -1: no limit
  std::vector<Column> columns_;  // slacks first, then those that were added
  std::size_t slacks_ = 0;
  std::vector<double> rhs_;
  std::vector<int> basis_;       // column of each row
  std::vector<double> basic_;    // its amount
  std::vector<double> inverse_;  // of the basis
  std::vector<double> duals_;
  double dearest_penalty_ = 1;
};

}  // namespace mullion
