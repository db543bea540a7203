#include "engine/solver/active_set.h"

#include <algorithm>

#include "engine/solver/elimination.h"
#include "engine/solver/feasibility.h"

namespace mullion::solver {
namespace {

// Guesses that may come out no better than the best before, and guesses in all.
constexpr int most_disappointments = 6, most_guesses = 60;

// Over the variables of the block, the values of its forms to be zero, and the multipliers of the
// inequalities, in this order.
class GuessedBlock {
 public:
  explicit GuessedBlock(const Block& block)
      : block_(block),
        first_value_(block.variable_count),
        first_multiplier_(first_value_ + static_cast<int>(block.zero.size())) {
    for (const Preference& wish : block.at_least) inequalities_.push_back(&wish.form);
    for (const Linear& form : block.required) inequalities_.push_back(&form);
  }

  std::optional<Pressure> run() {
    std::vector<bool> presses(inequalities_.size(), false);
    std::size_t fewest = inequalities_.size() + 1;
    int disappointments = 0;
    for (int guess = 0; guess < most_guesses && disappointments < most_disappointments; ++guess) {
      if (!solve(presses)) return std::nullopt;
      std::vector<std::size_t> wrong = of_wrong_sign(presses);
      if (wrong.empty()) wrong = excluding_each_other(presses);
      if (wrong.empty()) return pressure();
      if (wrong.size() < fewest) {
        fewest = wrong.size();
        disappointments = 0;
      } else {
        ++disappointments;
      }
      for (const std::size_t i : wrong) presses[i] = !presses[i];
    }
    return std::nullopt;
  }

 private:
  Variable multiplier(std::size_t i) const {
    return Variable{first_multiplier_ + static_cast<int>(i)};
  }

  // The optimality conditions where exactly those that press are zero, or lack what their
  // multiplier says; the other multipliers stay zero. False where they contradict each other.
  bool solve(const std::vector<bool>& presses) {
    std::vector<Linear> equations;
    std::vector<Terms> gradient(static_cast<std::size_t>(first_value_));
    for (std::size_t j = 0; j < block_.zero.size(); ++j) {
      const Preference& wish = block_.zero[j];
      const Variable value{first_value_ + static_cast<int>(j)};
      equations.push_back(wish.form - Linear(value));
      for (const Term& term : wish.form.terms()) {
        gradient[static_cast<std::size_t>(term.variable)].push_back(
            {value.index, term.coefficient * wish.weight});
      }
    }
    for (std::size_t i = 0; i < inequalities_.size(); ++i) {
      if (!presses[i]) continue;
      Linear form = *inequalities_[i];
      if (i < block_.at_least.size()) {
        form.add(Linear(multiplier(i)), Rational(1) / block_.at_least[i].weight);
      }
      for (const Term& term : inequalities_[i]->terms()) {
        gradient[static_cast<std::size_t>(term.variable)].push_back(
            {multiplier(i).index, -term.coefficient});
      }
      equations.push_back(std::move(form));
    }
    for (auto& sum : gradient) {
      if (!sum.empty()) equations.emplace_back(std::move(sum), Rational());
    }
    const int count = first_multiplier_ + static_cast<int>(inequalities_.size());
    solved_.emplace(count);
    if (!solved_->add(std::move(equations))) return false;
    values_.assign(static_cast<std::size_t>(count), Rational());
    solved_->back_substitute(values_);
    return true;
  }

  std::vector<std::size_t> of_wrong_sign(const std::vector<bool>& presses) const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < presses.size(); ++i) {
      if (presses[i]) {
        if (values_[static_cast<std::size_t>(multiplier(i).index)].sign() < 0) out.push_back(i);
        continue;
      }
      const Linear form = solved_->reduce(*inequalities_[i]);
      if (form.is_constant() && form.constant().sign() < 0) out.push_back(i);
    }
    return out;
  }

  // Inequalities that depend on what the optimum leaves free and that cannot all hold there.
  std::vector<std::size_t> excluding_each_other(const std::vector<bool>& presses) const {
    std::vector<Linear> forms;
    std::vector<std::size_t> numbers;
    for (std::size_t i = 0; i < presses.size(); ++i) {
      if (presses[i]) continue;
      Linear form = solved_->reduce(*inequalities_[i]);
      if (form.is_constant()) continue;
      forms.push_back(std::move(form));
      numbers.push_back(i);
    }
    std::vector<std::size_t> out;
    for (const std::size_t i : solver::excluding_each_other(forms, solved_->variable_count())) {
      out.push_back(numbers[i]);
    }
    return out;
  }

  Pressure pressure() const {
    const auto first = values_.begin() + first_value_, last = values_.begin() + first_multiplier_;
    return {{first, last}, {last, values_.end()}};
  }

  const Block& block_;
  int first_value_;
  int first_multiplier_;
  std::vector<const Linear*> inequalities_;
  std::optional<Elimination> solved_;
  std::vector<Rational> values_;
};

}  // namespace

std::optional<Pressure> guess_pressure(const Block& block) {
  return GuessedBlock(block).run();
}

}  // namespace mullion::solver
