#include "engine/solver/level.h"

#include <utility>

#include "engine/solver/block.h"
#include "engine/solver/partition.h"

namespace mullion::solver {
namespace {

// A level over the free variables of a space, without what is constant there.
struct Reduced {
  std::vector<Linear> zero, at_least, required;
  std::vector<std::size_t> zero_index, at_least_index;  // in the level
};

struct BlockParts {
  std::vector<std::size_t> zero, at_least, required;  // in the reduced level
};

std::vector<BlockParts> blocks_of(const Reduced& reduced, int variable_count) {
  Partition partition(variable_count);
  for (const auto* forms : {&reduced.zero, &reduced.at_least, &reduced.required}) {
    for (const Linear& form : *forms) partition.join(form);
  }
  std::vector<BlockParts> blocks;
  std::vector<int> block_of(static_cast<std::size_t>(variable_count), -1);
  const auto block = [&](const Linear& form) -> BlockParts& {
    int& number = block_of[static_cast<std::size_t>(partition.part_of(form))];
    if (number < 0) {
      number = static_cast<int>(blocks.size());
      blocks.emplace_back();
    }
    return blocks[static_cast<std::size_t>(number)];
  };
  for (std::size_t i = 0; i < reduced.zero.size(); ++i) block(reduced.zero[i]).zero.push_back(i);
  for (std::size_t i = 0; i < reduced.at_least.size(); ++i) {
    block(reduced.at_least[i]).at_least.push_back(i);
  }
  for (std::size_t i = 0; i < reduced.required.size(); ++i) {
    block(reduced.required[i]).required.push_back(i);
  }
  return blocks;
}

class Optimiser {
 public:
  Optimiser(const Elimination& space, const Level& level) : level_(level), local_(space) {
    optimum_.missed.resize(level.at_least.size(), false);
    take(space);
  }

  std::optional<LevelOptimum> run(int variable_count) {
    if (impossible_) return std::nullopt;
    for (const BlockParts& parts : blocks_of(reduced_, variable_count)) {
      if (parts.zero.empty() && parts.at_least.empty()) continue;
      const auto result = optimise_block(localised(parts));
      if (!result) return std::nullopt;
      record(parts, *result);
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
      std::vector<Linear::Term> terms;
      for (const Linear::Term& term : form.terms()) {
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

  void take(const Elimination& space) {
    for (std::size_t i = 0; i < level_.zero.size(); ++i) {
      Linear form = space.reduce(level_.zero[i].form);
      if (form.is_constant()) continue;
      reduced_.zero.push_back(std::move(form));
      reduced_.zero_index.push_back(i);
    }
    for (std::size_t i = 0; i < level_.at_least.size(); ++i) {
      Linear form = space.reduce(level_.at_least[i].form);
      if (form.is_constant()) {
        optimum_.missed[i] = form.constant().sign() < 0;
        continue;
      }
      reduced_.at_least.push_back(std::move(form));
      reduced_.at_least_index.push_back(i);
    }
    for (const Linear& required : level_.required) {
      Linear form = space.reduce(required);
      if (!form.is_constant()) {
        reduced_.required.push_back(std::move(form));
      } else if (form.constant().sign() < 0) {
        impossible_ = true;
      }
    }
  }

  Block localised(const BlockParts& parts) {
    Block block;
    for (const std::size_t i : parts.zero) {
      block.zero.push_back({local_(reduced_.zero[i]), level_.zero[reduced_.zero_index[i]].weight});
    }
    for (const std::size_t i : parts.at_least) {
      block.at_least.push_back(
          {local_(reduced_.at_least[i]), level_.at_least[reduced_.at_least_index[i]].weight});
    }
    for (const std::size_t i : parts.required)
      block.required.push_back(local_(reduced_.required[i]));
    block.variable_count = local_.restart();
    return block;
  }

  void record(const BlockParts& parts, const BlockOptimum& result) {
    std::vector<Linear> equations;
    for (std::size_t k = 0; k < parts.zero.size(); ++k) {
      equations.push_back(reduced_.zero[parts.zero[k]] - Linear(result.zero[k]));
    }
    for (std::size_t k = 0; k < parts.at_least.size(); ++k) {
      if (result.missing[k].is_zero()) continue;
      const std::size_t i = parts.at_least[k];
      optimum_.missed[reduced_.at_least_index[i]] = true;
      equations.push_back(reduced_.at_least[i] + Linear(result.missing[k]));
    }
    for (std::size_t k = 0; k < parts.required.size(); ++k) {
      if (result.presses[k]) equations.push_back(reduced_.required[parts.required[k]]);
    }
    optimum_.blocks.push_back({std::move(equations), result.is_independent});
  }

  const Level& level_;
  Numbering local_;
  Reduced reduced_;
  LevelOptimum optimum_;
  bool impossible_ = false;
};

}  // namespace

std::optional<LevelOptimum> optimise_level(const Elimination& space, const Level& level) {
  return Optimiser(space, level).run(space.variable_count());
}

}  // namespace mullion::solver
