#include "engine/solver/holding.h"

#include <algorithm>
#include <utility>

#include "engine/solver/room.h"

namespace mullion::solver {
namespace {

// What is left of a level, or of one of its blocks.
struct Rest {
  Level level;
  std::vector<std::size_t> numbers;     // of its `at_least` in the whole level
  std::optional<LevelOptimum> optimum;  // where it is known already
};

std::int64_t size_of(const Level& level) {
  return static_cast<std::int64_t>(level.zero.size() + level.at_least.size() +
                                   level.required.size());
}

Rest whole(const Level& level) {
  Rest out{level, {}, {}};
  for (std::size_t i = 0; i < level.at_least.size(); ++i) out.numbers.push_back(i);
  return out;
}

Rest rest_of(const Rest& rest, const Members& members) {
  Rest out;
  for (const std::size_t i : members.zero) out.level.zero.push_back(rest.level.zero[i]);
  for (const std::size_t i : members.required) out.level.required.push_back(rest.level.required[i]);
  for (const std::size_t i : members.at_least) {
    out.level.at_least.push_back(rest.level.at_least[i]);
    out.numbers.push_back(rest.numbers[i]);
  }
  return out;
}

class Holder {
 public:
  Holder(Lattice& lattice, Method method, std::int64_t& work_left)
      : lattice_(lattice), method_(method), work_left_(work_left) {}

  std::optional<Held> run(const Level& level) {
    held_.missed.resize(level.at_least.size());
    waiting_.push_back(whole(level));
    while (!waiting_.empty()) {
      Rest rest = std::move(waiting_.back());
      waiting_.pop_back();
      work_left_ -= size_of(rest.level);
      if (work_left_ < 0) return std::nullopt;
      if (!rest.optimum) rest.optimum = optimum_on(lattice_, rest.level);
      if (!rest.optimum) return std::nullopt;
      for (std::size_t i = 0; i < rest.numbers.size(); ++i) {
        held_.missed[rest.numbers[i]] = rest.optimum->missed[i];
      }
      for (LevelOptimum::Block& block : rest.optimum->blocks) {
        if (!hold(rest, block)) return std::nullopt;
      }
    }
    return std::move(held_);
  }

 private:
  // False where nothing is left. What the grid leaves open of the block waits for its turn.
  bool hold(const Rest& rest, LevelOptimum::Block& block) {
    if (method_ == Method::repairing && !block.is_independent) return hold_repairing(rest, block);
    const auto has_room = method_ == Method::leaving_room
                              ? hold_leaving_room(lattice_, block, rest.level.required)
                              : std::nullopt;
    if (has_room ? *has_room : hold_nearest(block)) return true;
    held_.is_rounded = true;
    waiting_.push_back(rest_of(rest, block.members));
    return true;
  }

  // True where all equations are held at zero.
  bool hold_nearest(const LevelOptimum::Block& block) {
    bool is_zero = true;
    for (const Linear& equation : block.equations) {
      if (lattice_.hold_at_zero(equation)) continue;
      is_zero = false;
      if (lattice_.space().reduce(equation).is_constant()) break;
      const Rational nearest = lattice_.values_around_zero(equation).front();
      lattice_.hold_at_zero(equation - Linear(nearest));
      if (!block.is_independent) break;
    }
    return is_zero;
  }

  bool hold_repairing(const Rest& rest, LevelOptimum::Block& block) {
    auto& equations = block.equations;
    std::rotate(equations.begin(), equations.end() - static_cast<std::ptrdiff_t>(block.limits),
                equations.end());
    const auto refused =
        std::find_if(equations.begin(), equations.end(),
                     [&](const Linear& equation) { return !lattice_.hold_at_zero(equation); });
    if (refused == equations.end()) return true;
    held_.is_rounded = true;
    waiting_.push_back(rest_of(rest, block.members));
    return lattice_.space().reduce(*refused).is_constant() || hold_near(*refused, waiting_.back());
  }

  // At the nearest value that leaves anything of the rest.
  bool hold_near(const Linear& form, Rest& rest) {
    const std::vector<Rational> values = lattice_.values_around_zero(form);
    const Lattice::Mark mark = lattice_.mark();
    for (const Rational& value : values) {
      Rest trial = rest;
      lattice_.hold_at_zero(form - Linear(value));
      trial.optimum = optimum_on(lattice_, trial.level);
      if (trial.optimum) {
        rest = std::move(trial);
        return true;
      }
      lattice_.rewind(mark);
    }
    return false;
  }

  Lattice& lattice_;
  Method method_;
  std::int64_t& work_left_;
  Held held_;
  std::vector<Rest> waiting_;
};

}  // namespace

std::optional<LevelOptimum> optimum_on(const Lattice& lattice, Level& level) {
  for (Linear& form : level.required) {
    if (!lattice.space().is_reduced(form)) form = lattice.tightened(std::move(form));
  }
  return optimise_level(lattice.space(), level);
}

std::optional<Held> hold_level(Lattice& lattice, const Level& level, Method method,
                               std::int64_t& work_left) {
  return Holder(lattice, method, work_left).run(level);
}

}  // namespace mullion::solver
