#include "engine/solver/level.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "engine/solver/block.h"
#include "engine/solver/partition.h"

namespace mullion::solver {
namespace {

void reduce(const Elimination& space, std::vector<Preference>& wishes) {
  for (Preference& wish : wishes) wish.form = space.reduce(std::move(wish.form));
  std::erase_if(wishes, [](const Preference& wish) { return wish.form.is_constant(); });
}

// The forms that are not constant, by block.
std::vector<Members> blocks_of(const Level& level, int variable_count) {
  Partition partition(variable_count);
  for (const Preference& wish : level.zero) partition.join(wish.form);
  for (const Preference& wish : level.at_least) partition.join(wish.form);
  for (const Linear& form : level.required) partition.join(form);

  std::vector<Members> blocks;
  std::vector<int> block_of(static_cast<std::size_t>(variable_count), -1);
  const auto put = [&](const Linear& form, std::vector<std::size_t> Members::*member,
                       std::size_t i) {
    if (form.is_constant()) return;
    int& number = block_of[static_cast<std::size_t>(partition.part_of(form))];
    if (number < 0) {
      number = static_cast<int>(blocks.size());
      blocks.emplace_back();
    }
    (blocks[static_cast<std::size_t>(number)].*member).push_back(i);
  };
  for (std::size_t i = 0; i < level.zero.size(); ++i) {
    put(level.zero[i].form, &Members::zero, i);
  }
  for (std::size_t i = 0; i < level.at_least.size(); ++i) {
    put(level.at_least[i].form, &Members::at_least, i);
  }
  for (std::size_t i = 0; i < level.required.size(); ++i) {
    put(level.required[i], &Members::required, i);
  }
  return blocks;
}

// Of the forms with these numbers that are positive multiples of each other but for their constants
// the one that says most, each; by rising number.
std::vector<std::size_t> strictest(const std::vector<Linear>& forms,
                                   std::vector<std::size_t> numbers) {
  if (numbers.size() < 2) return numbers;
  std::vector<Linear> scaled;
  scaled.reserve(numbers.size());
  for (const std::size_t i : numbers) {
    scaled.push_back(forms[i] / abs(forms[i].terms().front().coefficient));
  }
  std::vector<std::size_t> order(numbers.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (const auto terms = scaled[a].terms() <=> scaled[b].terms(); terms != 0) return terms < 0;
    if (scaled[a].constant() != scaled[b].constant()) {
      return scaled[a].constant() < scaled[b].constant();
    }
    return a < b;
  });
  const auto last = std::unique(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return scaled[a].terms() == scaled[b].terms();
  });
  std::vector<std::size_t> out;
  for (auto i = order.begin(); i != last; ++i) out.push_back(numbers[*i]);
  std::sort(out.begin(), out.end());
  return out;
}

class Optimiser {
 public:
  Optimiser(const Elimination& space, Level& level) : level_(level), local_(space) {
    reduce(space, level.zero);
    for (Preference& wish : level.at_least) wish.form = space.reduce(std::move(wish.form));
    for (Linear& form : level.required) form = space.reduce(std::move(form));
  }

  std::optional<LevelOptimum> run(int variable_count) {
    for (const Linear& form : level_.required) {
      if (form.is_constant() && form.constant().sign() < 0) return std::nullopt;
    }
    for (const Preference& wish : level_.at_least) {
      optimum_.missed.push_back(wish.form.is_constant() && wish.form.constant().sign() < 0);
    }
    for (Members& parts : blocks_of(level_, variable_count)) {
      if (parts.zero.empty() && parts.at_least.empty()) continue;
      parts.required = strictest(level_.required, std::move(parts.required));
      const auto result = optimise_block(localised(parts));
      if (!result) return std::nullopt;
      record(std::move(parts), *result);
    }
    return std::move(optimum_);
  }

 private:
  // Numbers variables from 0 in the order in which a block meets them.
  class Numbering {
   public:
    explicit Numbering(const Elimination& space)
        : number_(static_cast<std::size_t>(space.variable_count()), -1) {}
    Linear operator()(const Linear& form) {
      Terms terms;
      for (const Term& term : form.terms()) {
        int& number = number_[static_cast<std::size_t>(term.variable)];
        if (number < 0) {
          number = count_++;
          used_.push_back(term.variable);
        }
        terms.push_back({number, term.coefficient});
      }
      return collect(std::move(terms), form.constant());
    }
    int restart() {
      for (const int variable : used_) number_[static_cast<std::size_t>(variable)] = -1;
      used_.clear();
      return std::exchange(count_, 0);
    }

   private:
    std::vector<int> number_;
    std::vector<int> used_;
    int count_ = 0;
  };

  Block localised(const Members& parts) {
    const auto local = [&](const Preference& wish) {
      return Preference{local_(wish.form), wish.weight};
    };
    Block block;
    for (const std::size_t i : parts.zero) block.zero.push_back(local(level_.zero[i]));
    for (const std::size_t i : parts.at_least) block.at_least.push_back(local(level_.at_least[i]));
    for (const std::size_t i : parts.required) block.required.push_back(local_(level_.required[i]));
    block.variable_count = local_.restart();
    return block;
  }

  void record(Members parts, const BlockOptimum& result) {
    std::vector<Linear> equations;
    for (std::size_t k = 0; k < parts.zero.size(); ++k) {
      equations.push_back(level_.zero[parts.zero[k]].form - Linear(result.zero[k]));
    }
    for (std::size_t k = 0; k < parts.at_least.size(); ++k) {
      if (result.missing[k].is_zero()) continue;
      const std::size_t i = parts.at_least[k];
      optimum_.missed[i] = true;
      equations.push_back(level_.at_least[i].form + Linear(result.missing[k]));
    }
    for (std::size_t k = 0; k < parts.required.size(); ++k) {
      if (result.presses[k]) equations.push_back(level_.required[parts.required[k]]);
    }
    const auto limits =
        static_cast<std::size_t>(std::count(result.presses.begin(), result.presses.end(), true));
    optimum_.blocks.push_back(
        {std::move(equations), limits, result.is_independent, std::move(parts)});
  }

  const Level& level_;
  Numbering local_;
  LevelOptimum optimum_;
};

}  // namespace

std::vector<Preference> reduced(const Elimination& space, const std::vector<Preference>& wishes) {
  if (space.is_settled()) return {};
  std::vector<Preference> out = wishes;
  reduce(space, out);
  return out;
}

std::optional<LevelOptimum> optimise_level(const Elimination& space, Level& level) {
  return Optimiser(space, level).run(space.variable_count());
}

}  // namespace mullion::solver
