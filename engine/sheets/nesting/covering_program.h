#pragma once

// A linear programme: buy columns so that every demand is covered, at the least cost.
//
//   minimise   sum cost_j x_j
//   subject to sum a_ij x_j >= demand_i,   sum over the columns of stock s of x_j <= on hand_s
//
// Solved by Clp's simplex method in floating point, each time from the last basis. Its answers are
// advice: a bound that is printed is derived from the duals by exact arithmetic elsewhere.

#include <cstdint>
#include <memory>
#include <optional>
#include <utility>
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
  CoveringProgram(const std::vector<double>& demands,
                  const std::vector<std::optional<double>>& limits,
                  const std::vector<double>& penalties);
  ~CoveringProgram();
  CoveringProgram(CoveringProgram&&) noexcept;
  CoveringProgram& operator=(CoveringProgram&&) noexcept;

  void add(const CoveringColumn& column);
  // New right-hand sides; those of stocks without a limit are not read.
  void set_right_sides(const std::vector<double>& demands, const std::vector<double>& limits);

  // Where the simplex method gives up, the amounts or the duals may be far from the best; all are
  // finite numbers.
  void solve();

  // Of the last solution.
  std::vector<double> amounts() const;                         // per column
  const std::vector<double>& duals() const { return duals_; }  // >= 0 demands, then <= 0 stocks

  // The time that the solutions took so far, in entries of the programme that were looked at.
  std::int64_t effort() const;

 private:
  struct Solver;
  std::unique_ptr<Solver> solver_;
  std::vector<int> stock_row_;  // -1: no limit
  std::size_t demands_;
  std::vector<double> duals_;
};

}  // namespace mullion
