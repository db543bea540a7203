#include "engine/solver/rounding.h"

#include <algorithm>
#include <iterator>
#include <limits>

#include "engine/solver/hierarchy.h"
#include "engine/solver/holding.h"
#include "engine/solver/working_set.h"

namespace mullion::solver {
namespace {

// Second choices tried, by the size of the system, and working sets gone through, before the search
// gives up. A system that leaves time for fewer than the least is not searched that way.
constexpr int most_second_choices = 200, least_second_choices = 10;
constexpr int most_work = 20'000;
constexpr int most_working_sets = 20;
// Forms that are optimised where one method alone is tried.
constexpr std::int64_t most_with_one_method = 450'000;
constexpr std::int64_t no_bound = std::numeric_limits<std::int64_t>::max();

int second_choices(const Rules& rules) {
  const int size = rules.variable_count() + static_cast<int>(rules.inequalities.size());
  return std::min(most_work / std::max(size, 1), most_second_choices);
}

struct Stage {
  int level;
  const std::vector<Preference>* preferences;
};

struct State {
  Lattice lattice;
  WorkingSet inequalities;
};

// Where a state was when all levels before had been attained.
struct Settled {
  std::size_t levels = 0;
  Lattice::Mark mark;
  std::size_t missed = 0;
};

class Rounder {
 public:
  Rounder(const Rules& rules, const std::vector<std::vector<Preference>>& ranks, Effort effort)
      : level_count_(rules.levels.size()),
        effort_(effort),
        work_left_(effort == Effort::one_method ? most_with_one_method : no_bound),
        second_choices_left_(second_choices(rules)) {
    for (const auto& [level, preferences] : rules.levels) stages_.push_back({level, &preferences});
    int after = rules.levels.empty() ? 0 : rules.levels.rbegin()->first;
    for (const auto& preferences : ranks) stages_.push_back({++after, &preferences});
  }

  // Takes the state through all stages, or returns false.
  bool run(State& state) {
    const Lattice::Mark mark = state.lattice.mark();
    const WorkingSet inequalities = state.inequalities;
    const auto restart = [&] {
      rounded_ = false;
      state.lattice.rewind(mark);
      state.inequalities = inequalities;
    };
    for (std::size_t first = 0; first < method_count(); ++first) {
      if (run_from(first, state)) return true;
      restart();
    }
    if (effort_ == Effort::one_method) return false;
    return second_choices_left_ >= least_second_choices && run_carefully(state, 0);
  }

  const Settled& settled() const { return settled_; }

 private:
  static constexpr Method methods[] = {Method::nearest, Method::leaving_room, Method::repairing};

  std::size_t method_count() const {
    return effort_ == Effort::one_method ? 1 : std::size(methods);
  }

  // Each stage by the first of the methods from `first` on that leaves anything.
  bool run_from(std::size_t first, State& state) {
    for (std::size_t stage = 0; stage < stages_.size(); ++stage) {
      note_settled(state, stage);
      const Level level = level_at(state, stages_[stage]);
      const Lattice::Mark mark = state.lattice.mark();
      std::optional<Held> held;
      for (std::size_t method = first; method < method_count() && !held; ++method) {
        state.lattice.rewind(mark);
        held = hold_level(state.lattice, level, methods[method], work_left_);
      }
      if (!held) return false;
      rounded_ = rounded_ || held->is_rounded;
      state.inequalities.leave(stages_[stage].level, held->missed);
    }
    return true;
  }

  // One equation at a time, with second choices.
  bool run_carefully(State& state, std::size_t stage) {
    for (; stage < stages_.size(); ++stage) {
      note_settled(state, stage);
      Level level = level_at(state, stages_[stage]);
      const auto optimum = optimum_on(state.lattice, level);
      if (!optimum) return false;
      for (const auto& block : optimum->blocks) {
        if (const Linear* refused = hold(state.lattice, block.equations)) {
          return try_values_around(*refused, state, stage);
        }
      }
      state.inequalities.leave(stages_[stage].level, optimum->missed);
    }
    return true;
  }

  bool try_values_around(const Linear& form, State& state, std::size_t stage) {
    for (const Rational& value : state.lattice.values_around_zero(form)) {
      State trial = state;
      trial.lattice.hold_at_zero(form - Linear(value));
      if (run_carefully(trial, stage)) {
        state = std::move(trial);
        return true;
      }
      if (--second_choices_left_ < 0) return false;
    }
    return false;
  }

  void note_settled(const State& state, std::size_t stage) {
    if (rounded_ || stage > level_count_) return;
    settled_ = {stage, state.lattice.mark(), state.inequalities.missed().size()};
  }

  static Level level_at(State& state, const Stage& stage) {
    Level level{reduced(state.lattice.space(), *stage.preferences), {}, {}};
    state.inequalities.enter(stage.level, state.lattice.space(), level);
    for (Linear& form : level.required) form = state.lattice.tightened(std::move(form));
    return level;
  }

  // The first equation that the grid does not attain; null where all hold.
  const Linear* hold(Lattice& lattice, const std::vector<Linear>& equations) {
    for (const Linear& equation : equations) {
      if (lattice.hold_at_zero(equation)) continue;
      rounded_ = true;
      return &equation;
    }
    return nullptr;
  }

  std::size_t level_count_;
  std::vector<Stage> stages_;
  Effort effort_;
  std::int64_t work_left_;
  bool rounded_ = false;
  Settled settled_;
  int second_choices_left_;
};

// The inequalities that have nothing to spare: what moves is likely to break them.
std::vector<std::size_t> not_slack(const Rules& rules, const std::vector<Rational>& values) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < rules.inequalities.size(); ++i) {
    if (evaluate(rules.inequalities[i].form, values).sign() <= 0) out.push_back(i);
  }
  return out;
}

// The best values that the state leaves; what they break joins the working set. Empty where the
// working set leaves none.
std::vector<Rational> values_at(const State& state, const Rules& rules,
                                std::vector<std::size_t>& working) {
  const Elimination& space = state.lattice.space();
  if (space.is_settled()) {
    std::vector<Rational> values(static_cast<std::size_t>(space.variable_count()));
    space.back_substitute(values);
    extend(working, rules, values);
    return values;
  }
  auto optimum = optimise(space, rules, working);
  working = optimum ? std::move(optimum->working) : std::move(optimum.error());
  return optimum ? std::move(optimum->values) : std::vector<Rational>();
}

}  // namespace

std::optional<Rounded> round_to_grid(const Lattice& lattice, const Rules& rules,
                                     const std::vector<Rational>& exact,
                                     const std::vector<std::vector<Preference>>& ranks,
                                     Effort effort) {
  std::vector<std::size_t> working = not_slack(rules, exact);
  for (int round = 0; round < most_working_sets; ++round) {
    State state{lattice, WorkingSet(rules, working)};
    Rounder rounder(rules, ranks, effort);
    if (!rounder.run(state)) return std::nullopt;
    std::vector<std::size_t> larger = working;
    std::vector<Rational> values = values_at(state, rules, larger);
    if (!values.empty() && larger.size() == working.size()) {
      const Settled& settled = rounder.settled();
      auto missed = state.inequalities.missed();
      missed.resize(settled.missed);
      state.lattice.rewind(settled.mark);
      return Rounded{std::move(values), settled.levels, std::move(state.lattice),
                     std::move(working), std::move(missed)};
    }
    if (larger.size() == working.size()) return std::nullopt;
    working = std::move(larger);
  }
  return std::nullopt;
}

}  // namespace mullion::solver
