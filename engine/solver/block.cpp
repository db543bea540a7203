#include "engine/solver/block.h"

#include <algorithm>

#include "engine/solver/active_set.h"
#include "engine/solver/complementarity.h"
#include "engine/solver/feasibility.h"

namespace mullion::solver {
namespace {

BlockOptimum read(const Block& block, Pressure pressure) {
  BlockOptimum out;
  out.zero = std::move(pressure.zero);
  for (std::size_t i = 0; i < pressure.multipliers.size(); ++i) {
    if (i < block.at_least.size()) {
      out.missing.push_back(pressure.multipliers[i] / block.at_least[i].weight);
    } else {
      out.presses.push_back(!pressure.multipliers[i].is_zero());
    }
  }
  return out;
}

std::optional<BlockOptimum> optimum_by_guessing(const Block& block) {
  auto pressure = guess_pressure(block);
  if (!pressure) return std::nullopt;
  return read(block, std::move(*pressure));
}

// The optimality conditions: with residuals r of the wishes to be zero and multipliers u of the
// inequalities g >= 0,
//   form_j(y) - r_j = 0,   sum of weight_j r_j form_j' = sum of u_i g_i',
// solved for y and r with u as parameters (S. Boyd and L. Vandenberghe, "Convex Optimization",
// 5.5.3).
class Conditions {
 public:
  explicit Conditions(const Block& block)
      : block_(block),
        first_residual_(block.variable_count),
        first_multiplier_(first_residual_ + static_cast<int>(block.zero.size())),
        solved_(first_multiplier_ + static_cast<int>(block.at_least.size() + block.required.size()),
                first_multiplier_) {
    for (const Preference& wish : block.at_least) inequalities_.push_back(&wish.form);
    for (const Linear& form : block.required) inequalities_.push_back(&form);
    solved_.add(equations());
  }

  std::optional<BlockOptimum> optimum() const {
    auto multipliers = solve_multipliers();
    if (!multipliers) return std::nullopt;
    std::vector<Rational> values(static_cast<std::size_t>(solved_.variable_count()));
    std::copy(multipliers->begin(), multipliers->end(), values.begin() + first_multiplier_);
    solved_.back_substitute(values);
    return read(block_, {{values.begin() + first_residual_, values.begin() + first_multiplier_},
                         std::move(*multipliers)});
  }

 private:
  std::vector<Linear> equations() const {
    std::vector<Linear> out;
    std::vector<Terms> gradient(static_cast<std::size_t>(block_.variable_count));
    for (std::size_t j = 0; j < block_.zero.size(); ++j) {
      const Preference& wish = block_.zero[j];
      const Variable residual{first_residual_ + static_cast<int>(j)};
      out.push_back(wish.form - Linear(residual));
      for (const Term& term : wish.form.terms()) {
        gradient[static_cast<std::size_t>(term.variable)].push_back(
            {residual.index, term.coefficient * wish.weight});
      }
    }
    for (std::size_t i = 0; i < inequalities_.size(); ++i) {
      const int multiplier = first_multiplier_ + static_cast<int>(i);
      for (const Term& term : inequalities_[i]->terms()) {
        auto& sum = gradient[static_cast<std::size_t>(term.variable)];
        // A variable that no wish depends on is left free; solve_multipliers sees to it.
        if (!sum.empty()) sum.push_back({multiplier, -term.coefficient});
      }
    }
    for (auto& sum : gradient) {
      if (!sum.empty()) out.emplace_back(std::move(sum), Rational());
    }
    return out;
  }

  std::optional<std::vector<Rational>> solve_multipliers() const {
    const std::size_t count = inequalities_.size();
    if (count == 0) return std::vector<Rational>();
    Matrix by_multiplier(count, std::vector<Rational>(count)), by_free(count);
    std::vector<Rational> constants;
    std::vector<int> column(static_cast<std::size_t>(first_residual_), -1);
    int columns = 0;
    for (std::size_t i = 0; i < count; ++i) {
      const Linear form = solved_.reduce(*inequalities_[i]);
      constants.push_back(form.constant());
      for (const Term& term : form.terms()) {
        if (term.variable >= first_multiplier_) {
          by_multiplier[i][static_cast<std::size_t>(term.variable - first_multiplier_)] =
              term.coefficient;
          continue;
        }
        int& place = column[static_cast<std::size_t>(term.variable)];
        if (place < 0) place = columns++;
        auto& row = by_free[i];
        row.resize(static_cast<std::size_t>(columns));
        row[static_cast<std::size_t>(place)] = term.coefficient;
      }
    }
    for (auto& row : by_free) row.resize(static_cast<std::size_t>(columns));
    for (std::size_t i = 0; i < block_.at_least.size(); ++i) {
      by_multiplier[i][i] += Rational(1) / block_.at_least[i].weight;
    }
    return solve_complementarity(std::move(by_multiplier), by_free, std::move(constants));
  }

  const Block& block_;
  int first_residual_;
  int first_multiplier_;
  Elimination solved_;
  std::vector<const Linear*> inequalities_;
};

// Whether the inequalities can hold where the wishes to be zero do.
bool leaves_room(const Elimination& all_zero, const Block& block) {
  std::vector<Linear> forms;
  const auto may_hold = [&](const Linear& inequality) {
    Linear form = all_zero.reduce(inequality);
    if (form.is_constant()) return form.constant().sign() >= 0;
    forms.push_back(std::move(form));
    return true;
  };
  return std::all_of(block.at_least.begin(), block.at_least.end(),
                     [&](const Preference& wish) { return may_hold(wish.form); }) &&
         std::all_of(block.required.begin(), block.required.end(), may_hold) &&
         can_be_at_least_zero(forms, block.variable_count);
}

bool is_zero(const std::vector<Rational>& values) {
  return std::all_of(values.begin(), values.end(), [](const auto& v) { return v.is_zero(); });
}

}  // namespace

std::optional<BlockOptimum> optimise_block(const Block& block) {
  std::vector<Linear> forms;
  for (const Preference& wish : block.zero) forms.push_back(wish.form);
  Elimination all_zero(block.variable_count);
  const bool can_be_zero = all_zero.add(std::move(forms));
  const bool is_independent =
      can_be_zero && all_zero.pivot_count() == static_cast<int>(block.zero.size());
  if (can_be_zero && leaves_room(all_zero, block)) {
    return BlockOptimum{std::vector<Rational>(block.zero.size()),
                        std::vector<Rational>(block.at_least.size()),
                        std::vector<bool>(block.required.size(), false), is_independent};
  }
  auto optimum = optimum_by_guessing(block);
  if (!optimum) optimum = Conditions(block).optimum();
  if (optimum) {
    const auto& presses = optimum->presses;
    optimum->is_independent =
        is_independent && is_zero(optimum->zero) && is_zero(optimum->missing) &&
        std::none_of(presses.begin(), presses.end(), [](bool pressing) { return pressing; });
  }
  return optimum;
}

}  // namespace mullion::solver
