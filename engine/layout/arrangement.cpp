#include "engine/layout/arrangement.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace mullion::layout {
namespace {

// A group is as large as its largest part. That is no linear rule: one part has to be chosen that
// fills the group, and the others fit in; of a group whose parts a rule moves, one that begins it
// and one that ends it. The choices are part of the problem: those that the best arrangement
// without them suggests come first, one group after the other is given another where the rules do
// not hold, and then each is changed as long as that makes the arrangement better. So many systems
// are solved for it at most, and for a large one none that only makes it better.
constexpr int most_solved = 400, most_solved_for_better = 64;
constexpr int large = 400;  // variables

using Extent = Model::Extent;

// Of a group: the parts that begin and end it, most often the same.
struct Choice {
  std::size_t begins = 0, ends = 0;
  friend bool operator==(const Choice&, const Choice&) = default;
};

// Those first that the solution comes nearest to.
std::vector<Choice> choices_for(const Extent& extent, const solver::Solution& solution) {
  const auto sorted = [&](const auto& value) {
    std::vector<std::size_t> order(extent.parts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::vector<solver::Rational> values;
    for (const Span& part : extent.parts) values.push_back(value(part));
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return values[a] > values[b]; });
    return order;
  };
  std::vector<Choice> out;
  if (!extent.is_hull) {
    for (const std::size_t i : sorted([&](const Span& s) { return solution.value(s.size()); })) {
      out.push_back({i, i});
    }
    return out;
  }
  constexpr std::size_t most = 8;  // parts at either end
  auto begins = sorted([&](const Span& s) { return -solution.value(s.start); });
  auto ends = sorted([&](const Span& s) { return solution.value(s.end); });
  begins.resize(std::min(begins.size(), most));
  ends.resize(std::min(ends.size(), most));
  for (const std::size_t begin : begins) {
    for (const std::size_t end : ends) out.push_back({begin, end});
  }
  return out;
}

bool is_met(const Extent& extent, const Choice& choice, const solver::Solution& solution) {
  return solution.value(extent.parts[choice.begins].start) == solution.value(extent.group.start) &&
         solution.value(extent.parts[choice.ends].end) == solution.value(extent.group.end);
}

void fill(Model& model, std::size_t extent, const Choice& choice) {
  const Extent& of = model.extents[extent];
  model.system.add(of.parts[choice.begins].start == of.group.start);
  model.system.add(of.parts[choice.ends].end == of.group.end);
}

Model filled(Model model, const std::vector<Choice>& choices) {
  for (std::size_t i = 0; i < choices.size(); ++i) fill(model, i, choices[i]);
  return model;
}

// What each level leaves undone, the strongest first.
std::vector<solver::Rational> costs_of(const Model& model, const solver::Solution& solution) {
  std::vector<solver::Rational> out(level::free_sizes + 1);
  for (const solver::Constraint& rule : model.system.constraints()) {
    const solver::Rational off = violation(rule, solution.value(rule.form));
    out[static_cast<std::size_t>(rule.level)] += rule.weight * off * off;
  }
  return out;
}

class Filling {
 public:
  Filling(const Model& model, solver::Solution relaxed)
      : model_(model), relaxed_(std::move(relaxed)) {}

  tl::expected<Arrangement, Refusal> run() {
    std::vector<Choice> first;
    bool met = true;
    for (const Extent& extent : model_.extents) {
      first.push_back(choices_for(extent, relaxed_).front());
      met = met && is_met(extent, first.back(), relaxed_);
    }
    if (met) return Arrangement{filled(model_, first), relaxed_};
    Model model = filled(model_, first);
    auto best = solver::solve(model.system, relaxed_.looked_at);
    if (best) return better({std::move(model), std::move(*best)}, std::move(first));
    Refusal refusal{std::move(model), std::move(best.error())};
    std::vector<Choice> choices;
    auto found = one_by_one(model_, relaxed_, choices);
    if (!found) return tl::unexpected(std::move(refusal));
    return better(std::move(*found), std::move(choices));
  }

 private:
  std::optional<Arrangement> one_by_one(const Model& model, const solver::Solution& solution,
                                        std::vector<Choice>& choices) {
    const std::size_t next = choices.size();
    if (next == model.extents.size()) return Arrangement{model, solution};
    for (const Choice& choice : choices_for(model.extents[next], solution)) {
      if (++solved_ > most_solved) return std::nullopt;
      Model with = model;
      fill(with, next, choice);
      const auto best = solver::solve(with.system, solution.looked_at);
      if (!best) continue;
      choices.push_back(choice);
      if (auto out = one_by_one(with, *best, choices)) return out;
      choices.pop_back();
    }
    return std::nullopt;
  }

  Arrangement better(Arrangement best, std::vector<Choice> choices) const {
    auto costs = costs_of(best.model, best.solution);
    const auto least = costs_of(model_, relaxed_);
    if (costs == least || model_.system.variable_count() > large) return best;
    int solved = 0;
    for (bool helped = true; helped && solved < most_solved_for_better;) {
      helped = false;
      for (std::size_t i = 0; i < choices.size(); ++i) {
        for (const Choice& choice : choices_for(model_.extents[i], best.solution)) {
          if (choice == choices[i] || ++solved > most_solved_for_better) continue;
          std::vector<Choice> other = choices;
          other[i] = choice;
          Model model = filled(model_, other);
          auto solution = solver::solve(model.system, best.solution.looked_at);
          if (!solution) continue;
          auto other_costs = costs_of(model, *solution);
          if (other_costs >= costs) continue;
          best = {std::move(model), std::move(*solution)};
          choices = std::move(other);
          costs = std::move(other_costs);
          helped = true;
        }
      }
    }
    return best;
  }

  const Model& model_;
  solver::Solution relaxed_;
  int solved_ = 0;
};

}  // namespace

tl::expected<Arrangement, Refusal> arrange(Model model, const std::vector<int>& look_at) {
  auto solution = solver::solve(model.system, look_at);
  if (!solution) return tl::unexpected(Refusal{std::move(model), solution.error()});
  return Filling(model, std::move(*solution)).run();
}

}  // namespace mullion::layout
