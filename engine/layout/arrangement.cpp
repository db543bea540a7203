#include "engine/layout/arrangement.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace mullion::layout {
namespace {

// A group is as large as its largest part. That is no linear rule: one part has to be chosen that
// fills the group, and the others fit in. So many choices are tried before none is said to exist.
constexpr int most_choices = 64;

// For every such group its parts, those first that are largest in the solution.
class Choices {
 public:
  Choices(const Model& model, const solver::Solution& solution) {
    for (const Model::Extent& extent : model.extents) {
      std::vector<solver::Rational> sizes;
      for (const Span& part : extent.parts) sizes.push_back(solution.value(part.size()));
      std::vector<std::size_t> order(sizes.size());
      std::iota(order.begin(), order.end(), std::size_t{0});
      std::stable_sort(order.begin(), order.end(),
                       [&](std::size_t a, std::size_t b) { return sizes[a] > sizes[b]; });
      is_met_ = is_met_ && sizes[order.front()] == solution.value(extent.group.size());
      orders_.push_back(std::move(order));
    }
    turn_.resize(orders_.size());
  }

  // The first choice holds in the solution already.
  bool is_met() const { return is_met_; }

  Model applied_to(Model model) const {
    for (std::size_t i = 0; i < orders_.size(); ++i) {
      const Model::Extent& extent = model.extents[i];
      const Span& part = extent.parts[orders_[i][turn_[i]]];
      model.system.add(part.start == extent.group.start);
      model.system.add(part.end == extent.group.end);
    }
    return model;
  }

  // False where there is no other choice.
  bool next() {
    for (std::size_t i = 0; i < orders_.size(); ++i) {
      if (++turn_[i] < orders_[i].size()) return true;
      turn_[i] = 0;
    }
    return false;
  }

 private:
  std::vector<std::vector<std::size_t>> orders_;
  std::vector<std::size_t> turn_;
  bool is_met_ = true;
};

}  // namespace

tl::expected<Arrangement, Refusal> arrange(Model model, const std::vector<int>& look_at) {
  const auto solution = solver::solve(model.system, look_at);
  if (!solution) return tl::unexpected(Refusal{std::move(model), solution.error()});
  Choices choices(model, *solution);
  if (choices.is_met()) return Arrangement{choices.applied_to(std::move(model)), *solution};

  std::optional<Refusal> first;
  for (int tried = 0; tried < most_choices; ++tried) {
    Model filled = choices.applied_to(model);
    auto best = solver::solve(filled.system, solution->looked_at);
    if (best) return Arrangement{std::move(filled), std::move(*best)};
    if (!first) first = Refusal{std::move(filled), std::move(best.error())};
    if (!choices.next()) break;
  }
  return tl::unexpected(std::move(*first));
}

}  // namespace mullion::layout
