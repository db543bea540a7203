#include "engine/solver/level.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <stdexcept>

namespace mullion::solver {
namespace {

// The preferences that still have something free in them, over free variables alone.
std::vector<Preference> reduced(const Elimination& space,
                                const std::vector<Preference>& preferences) {
  std::vector<Preference> out;
  for (const Preference& preference : preferences) {
    Linear form = space.reduce(preference.form);
    if (!form.is_constant()) out.push_back({std::move(form), preference.weight});
  }
  return out;
}

// Half the gradient of the weighted sum of squares, as one form per free variable.
std::map<int, Linear> gradient(const std::vector<Preference>& preferences) {
  std::map<int, std::vector<Linear::Term>> terms;
  std::map<int, Rational> constants;
  for (const Preference& preference : preferences) {
    for (const Linear::Term& by : preference.form.terms()) {
      const Rational factor = preference.weight * by.coefficient;
      auto& sum = terms[by.variable];
      for (const Linear::Term& term : preference.form.terms()) {
        sum.push_back({term.variable, factor * term.coefficient});
      }
      constants[by.variable] += factor * preference.form.constant();
    }
  }
  std::map<int, Linear> out;
  for (auto& [variable, sum] : terms) {
    out.emplace(variable, collect(std::move(sum), constants[variable]));
  }
  return out;
}

// The minimisers of a sum of squares are the solutions of gradient = 0, which always has some.
void insert_minimisers(Elimination& space, const std::vector<Preference>& preferences) {
  for (const auto& [variable, form] : gradient(reduced(space, preferences))) space.insert(form);
}

// Groups preferences that share no free variable with any other group.
std::vector<std::vector<Preference>> components(std::vector<Preference> preferences) {
  std::vector<std::size_t> parent(preferences.size());
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (parent[i] != i) i = parent[i] = parent[parent[i]];
    return i;
  };
  std::map<int, std::size_t> owner;
  for (std::size_t i = 0; i < preferences.size(); ++i) {
    for (const Linear::Term& term : preferences[i].form.terms()) {
      const auto [entry, is_new] = owner.emplace(term.variable, i);
      if (!is_new) parent[find(i)] = find(entry->second);
    }
  }
  std::map<std::size_t, std::vector<Preference>> groups;
  for (std::size_t i = 0; i < preferences.size(); ++i) {
    groups[find(i)].push_back(std::move(preferences[i]));
  }
  std::vector<std::vector<Preference>> out;
  for (auto& [root, group] : groups) out.push_back(std::move(group));
  return out;
}

// Where all preferences of a component can hold at once they are equations; else least squares.
void optimise_freely(Elimination& space, const std::vector<Preference>& preferences) {
  for (const std::vector<Preference>& component : components(reduced(space, preferences))) {
    Elimination trial(space.variable_count());
    const bool all_hold =
        std::none_of(component.begin(), component.end(), [&](const Preference& preference) {
          return trial.insert(preference.form) == Elimination::Outcome::inconsistent;
        });
    if (all_hold) {
      for (const Preference& preference : component) space.insert(preference.form);
    } else {
      insert_minimisers(space, component);
    }
  }
}

class ActiveSet {
 public:
  ActiveSet(const Elimination& space, const std::vector<Preference>& preferences,
            const std::vector<Linear>& inequalities, std::vector<Rational>& point)
      : space_(space), preferences_(preferences), inequalities_(inequalities), point_(point) {}

  void run() {
    const std::size_t most_steps = 1000 + 200 * inequalities_.size();
    for (std::size_t step = 0; step < most_steps; ++step) {
      const std::vector<Rational> target = minimiser_with_active_held();
      if (target == point_) {
        const int drop = active_with_negative_multiplier();
        if (drop < 0) return;
        active_.erase(active_.begin() + drop);
      } else {
        move_towards(target);
      }
    }
    throw std::logic_error("the layout's preferences did not settle");
  }

 private:
  std::vector<Rational> minimiser_with_active_held() const {
    Elimination trial = space_;
    for (const std::size_t i : active_) trial.insert(inequalities_[i]);
    insert_minimisers(trial, preferences_);
    return trial.complete(point_);
  }

  void move_towards(const std::vector<Rational>& target) {
    Rational length = 1;
    std::size_t blocking = inequalities_.size();
    for (std::size_t i = 0; i < inequalities_.size(); ++i) {
      if (std::find(active_.begin(), active_.end(), i) != active_.end()) continue;
      const Rational here = evaluate(inequalities_[i], point_);
      const Rational there = evaluate(inequalities_[i], target);
      if (there.sign() >= 0) continue;
      const Rational reach = here / (here - there);
      if (reach < length) {
        length = reach;
        blocking = i;
      }
    }
    for (std::size_t v = 0; v < point_.size(); ++v) {
      point_[v] += length * (target[v] - point_[v]);
    }
    if (blocking < inequalities_.size()) {
      active_.insert(std::lower_bound(active_.begin(), active_.end(), blocking), blocking);
    }
  }

  // Solves gradient = sum of multiplier * inequality's coefficients. Position in `active_` of the
  // first with a negative multiplier; -1 where there is none.
  int active_with_negative_multiplier() const {
    if (active_.empty()) return -1;
    std::map<int, std::pair<std::vector<Linear::Term>, Rational>> equations;
    for (std::size_t k = 0; k < active_.size(); ++k) {
      const Linear form = space_.reduce(inequalities_[active_[k]]);
      for (const Linear::Term& term : form.terms()) {
        equations[term.variable].first.push_back({static_cast<int>(k), term.coefficient});
      }
    }
    for (const auto& [variable, form] : gradient(reduced(space_, preferences_))) {
      equations[variable].second = -evaluate(form, point_);
    }
    Elimination multipliers(static_cast<int>(active_.size()));
    for (auto& [variable, equation] : equations) {
      multipliers.insert(Linear(std::move(equation.first), equation.second));
    }
    const std::vector<Rational> values =
        multipliers.complete(std::vector<Rational>(active_.size()));
    for (std::size_t k = 0; k < values.size(); ++k) {
      if (values[k].sign() < 0) return static_cast<int>(k);
    }
    return -1;
  }

  const Elimination& space_;
  const std::vector<Preference>& preferences_;
  const std::vector<Linear>& inequalities_;
  std::vector<Rational>& point_;
  std::vector<std::size_t> active_;  // sorted; their forms are zero at the point, independent
};

}  // namespace

void optimise_level(Elimination& space, const std::vector<Preference>& preferences,
                    const std::vector<Linear>& inequalities, std::vector<Rational>& point) {
  if (inequalities.empty()) return optimise_freely(space, preferences);
  ActiveSet(space, preferences, inequalities, point).run();
  for (const Preference& preference : preferences) {
    space.insert(preference.form - Linear(evaluate(preference.form, point)));
  }
}

}  // namespace mullion::solver
