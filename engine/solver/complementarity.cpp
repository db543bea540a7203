#include "engine/solver/complementarity.h"

#include <utility>

namespace mullion::solver {
namespace {

// Row i: its basic variable = sum of entry * column's nonbasic variable (zero) + constant. Of each
// pair (u_i, w_i) one is basic in row i and the other nonbasic in column i.
class Tableau {
 public:
  Tableau(Matrix entries, std::vector<Rational> constants)
      : entries_(std::move(entries)),
        constants_(std::move(constants)),
        presses_(constants_.size(), false) {}

  // Lets an inequality settle the free variable of the last row and column, and drops that row and
  // column; where no inequality is left that depends on it nothing does.
  void settle_last() {
    const std::size_t last = entries_.size() - 1;
    std::size_t partner = 0;
    while (partner < last && (presses_[partner] || entries_[partner][last].is_zero())) ++partner;
    if (partner < last) {
      exchange(partner, last);
      presses_[partner] = true;
    }
    entries_.pop_back();
    for (auto& row : entries_) row.pop_back();
    constants_.pop_back();
    presses_.pop_back();
  }

  bool run() {
    const std::size_t size = entries_.size();
    for (std::size_t step = 0;; ++step) {
      // The largest shortfall is the better guess; the least index is what ends the search.
      const std::size_t row = step < 4 * size ? most_negative() : first_negative();
      if (row == size) return true;
      if (!entries_[row][row].is_zero()) {
        pivot(row, row);
        presses_[row] = !presses_[row];
        continue;
      }
      std::size_t partner = 0;
      while (partner < size && entries_[row][partner].sign() <= 0) ++partner;
      if (partner == size) return false;
      exchange(row, partner);
      presses_[row] = !presses_[row];
      presses_[partner] = !presses_[partner];
    }
  }

  std::vector<Rational> multipliers() const {
    std::vector<Rational> out(entries_.size());
    for (std::size_t i = 0; i < out.size(); ++i) {
      if (presses_[i]) out[i] = constants_[i];
    }
    return out;
  }

 private:
  std::size_t first_negative() const {
    std::size_t row = 0;
    while (row < constants_.size() && constants_[row].sign() >= 0) ++row;
    return row;
  }

  std::size_t most_negative() const {
    std::size_t best = first_negative();
    for (std::size_t row = best; row < constants_.size(); ++row) {
      if (constants_[row] < constants_[best]) best = row;
    }
    return best;
  }

  // Swaps the basic variable of row r with the nonbasic one of column s.
  void pivot(std::size_t r, std::size_t s) {
    std::vector<Rational>& row = entries_[r];
    const Rational inverse = Rational(1) / row[s];
    std::vector<std::size_t> used;
    for (std::size_t j = 0; j < row.size(); ++j) {
      if (j == s || row[j].is_zero()) continue;
      row[j] *= -inverse;
      used.push_back(j);
    }
    constants_[r] *= -inverse;
    row[s] = inverse;
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      if (i == r || entries_[i][s].is_zero()) continue;
      std::vector<Rational>& other = entries_[i];
      const Rational factor = other[s];
      for (const std::size_t j : used) other[j] += factor * row[j];
      other[s] = factor * inverse;
      constants_[i] += factor * constants_[r];
    }
  }

  // Both variables of pair a change places with both of pair b, and each pair keeps its row.
  void exchange(std::size_t a, std::size_t b) {
    pivot(a, b);
    pivot(b, a);
    std::swap(entries_[a], entries_[b]);
    std::swap(constants_[a], constants_[b]);
    for (auto& row : entries_) std::swap(row[a], row[b]);
  }

  Matrix entries_;
  std::vector<Rational> constants_;
  std::vector<bool> presses_;
};

// [ M  B ]
// [ -B' 0 ]
Matrix with_free_columns(Matrix m, const Matrix& b, std::size_t free_count) {
  const std::size_t size = m.size();
  for (std::size_t i = 0; i < size; ++i) m[i].insert(m[i].end(), b[i].begin(), b[i].end());
  for (std::size_t z = 0; z < free_count; ++z) {
    std::vector<Rational> row(size + free_count);
    for (std::size_t i = 0; i < size; ++i) row[i] = -b[i][z];
    m.push_back(std::move(row));
  }
  return m;
}

}  // namespace

std::optional<std::vector<Rational>> solve_complementarity(Matrix m, const Matrix& b,
                                                           std::vector<Rational> q) {
  const std::size_t free_count = b.empty() ? 0 : b.front().size();
  q.resize(q.size() + free_count);
  Tableau tableau(with_free_columns(std::move(m), b, free_count), std::move(q));
  for (std::size_t z = 0; z < free_count; ++z) tableau.settle_last();
  if (!tableau.run()) return std::nullopt;
  return tableau.multipliers();
}

}  // namespace mullion::solver
