#include "engine/solver/grid_search.h"

#include <algorithm>
#include <functional>
#include <optional>

#include "engine/solver/hierarchy.h"

namespace mullion::solver {
namespace {

struct Range {
  std::optional<Rational> least, most;
  bool is_empty() const { return least && most && *most < *least; }
};

Rational distance(const Range& range, const Rational& exact) {
  if (range.least && exact < *range.least) return *range.least - exact;
  if (range.most && exact > *range.most) return exact - *range.most;
  return {};
}

// `distances` by measure, measures by rising rank.
std::vector<std::vector<Rational>> by_rank(const std::vector<GridMeasure>& measures,
                                           const std::vector<Rational>& distances) {
  std::vector<std::vector<Rational>> out;
  for (std::size_t i = 0; i < measures.size(); ++i) {
    if (i == 0 || measures[i].rank != measures[i - 1].rank) out.emplace_back();
    out.back().push_back(distances[i]);
  }
  for (auto& rank : out) std::sort(rank.begin(), rank.end(), std::greater<>());
  return out;
}

std::vector<Rational> level_costs(const Rules& rules, const std::vector<Rational>& values) {
  std::map<int, Rational> sums;
  for (const auto& [level, preferences] : rules.levels) {
    Rational& sum = sums[level];
    for (const Preference& wish : preferences) {
      const Rational value = evaluate(wish.form, values);
      sum += wish.weight * value * value;
    }
  }
  for (const Inequality& inequality : rules.inequalities) {
    if (inequality.level == 0) continue;
    const Rational value = evaluate(inequality.form, values);
    if (value.sign() < 0) sums[inequality.level] += inequality.weight * value * value;
  }
  std::vector<Rational> out;
  out.reserve(sums.size());
  for (auto& [level, sum] : sums) out.push_back(std::move(sum));
  return out;
}

// What the points within wider ranges have in common: inequalities that matter there, and what the
// levels cost at least.
struct Outlook {
  std::vector<std::size_t> working;
  std::vector<Rational> levels;
};

class GridSearch {
 public:
  GridSearch(const Rules& rules, const std::vector<GridForm>& forms,
             const std::vector<GridMeasure>& measures, std::vector<Rational> start, int most_nodes)
      : rules_(rules),
        forms_(forms),
        measures_(measures),
        first_measure_(forms.size() - measures.size()),
        nodes_left_(most_nodes),
        best_(std::move(start)),
        ranges_(forms.size()) {
    if (!best_.empty()) best_cost_ = cost_of(rules, measures, best_);
    guided_ = rules;
    const int after = rules.levels.empty() ? 0 : rules.levels.rbegin()->first;
    for (const GridMeasure& measure : measures) {
      guided_.levels[after + 1 + measure.rank - measures.front().rank].push_back(
          {measure.form - Linear(measure.exact), 1});
    }
  }

  GridOptimum run() {
    const std::vector<Rational> origin(static_cast<std::size_t>(rules_.variable_count()));
    explore({{}, std::vector<Rational>(level_costs(rules_, origin).size())});
    return {std::move(best_), nodes_left_ >= 0};
  }

 private:
  // The optimum off the grid within the ranges.
  tl::expected<Optimum, std::vector<std::size_t>> relaxed(std::vector<std::size_t> working) {
    auto& inequalities = guided_.inequalities;
    for (std::size_t i = 0; i < forms_.size(); ++i) {
      const Linear& form = forms_[i].form;
      if (ranges_[i].least) inequalities.push_back({form - Linear(*ranges_[i].least)});
      if (ranges_[i].most) inequalities.push_back({Linear(*ranges_[i].most) - form});
    }
    for (std::size_t i = own_inequalities(); i < inequalities.size(); ++i) working.push_back(i);
    auto optimum = optimise(Elimination(rules_.variable_count()), guided_, std::move(working));
    inequalities.erase(inequalities.begin() + static_cast<std::ptrdiff_t>(own_inequalities()),
                       inequalities.end());
    return optimum;
  }

  std::size_t own_inequalities() const { return rules_.inequalities.size(); }

  bool is_better(const Cost& cost) const { return !best_cost_ || cost < *best_cost_; }

  // No point within the ranges costs less, where the levels cost so much at least.
  Cost bound(std::vector<Rational> levels) const {
    std::vector<Rational> distances;
    for (std::size_t i = 0; i < measures_.size(); ++i) {
      distances.push_back(distance(ranges_[first_measure_ + i], measures_[i].exact));
    }
    return {std::move(levels), by_rank(measures_, distances)};
  }

  void explore(const Outlook& wider) {
    if (!is_better(bound(wider.levels)) || --nodes_left_ < 0) return;
    auto node = relaxed(wider.working);
    if (!node) return;
    const Outlook here{own_among(std::move(node->working)), level_costs(rules_, node->values)};
    if (!is_better(bound(here.levels))) return;
    for (std::size_t i = 0; i < forms_.size(); ++i) {
      const Rational value = evaluate(forms_[i].form, node->values);
      if (!forms_[i].values.contains(value)) return split_off_grid(i, value, here);
    }
    Cost cost = cost_of(rules_, measures_, node->values);
    if (is_better(cost)) {
      best_ = node->values;
      best_cost_ = std::move(cost);
    }
    for (std::size_t i = 0; i < measures_.size(); ++i) {
      const Range& range = ranges_[first_measure_ + i];
      const Rational value = evaluate(measures_[i].form, node->values);
      if (abs(value - measures_[i].exact) > distance(range, measures_[i].exact)) {
        return split_on_grid(first_measure_ + i, value, value > measures_[i].exact, here);
      }
    }
  }

  // Without the inequalities that the ranges added.
  std::vector<std::size_t> own_among(std::vector<std::size_t> working) const {
    working.erase(std::lower_bound(working.begin(), working.end(), own_inequalities()),
                  working.end());
    return working;
  }

  void explore_range(std::size_t i, const Range& range, const Outlook& wider) {
    if (range.is_empty()) return;
    const Range before = std::exchange(ranges_[i], range);
    explore(wider);
    ranges_[i] = before;
  }

  Rational wanted(std::size_t i) const {
    return i < first_measure_ ? Rational() : measures_[i - first_measure_].exact;
  }

  // The nearer side first; of two that are equally near the one nearer to what is wanted, so that
  // the search does not drift away from it step by step.
  void split_off_grid(std::size_t i, const Rational& value, const Outlook& wider) {
    const Rational below = forms_[i].values.at_or_below(value);
    const Rational above = below + forms_[i].values.spacing;
    const Range lower{ranges_[i].least, below}, upper{above, ranges_[i].most};
    const Rational up = above - value, down = value - below;
    const bool lower_first =
        down < up || (down == up && abs(below - wanted(i)) <= abs(above - wanted(i)));
    explore_range(i, lower_first ? lower : upper, wider);
    explore_range(i, lower_first ? upper : lower, wider);
  }

  void split_on_grid(std::size_t i, const Rational& value, bool lower_first, const Outlook& wider) {
    const Range just_here{value, value};
    const Range lower{ranges_[i].least, value - forms_[i].values.spacing};
    const Range upper{value + forms_[i].values.spacing, ranges_[i].most};
    explore_range(i, lower_first ? lower : upper, wider);
    explore_range(i, just_here, wider);
    explore_range(i, lower_first ? upper : lower, wider);
  }

  const Rules& rules_;
  const std::vector<GridForm>& forms_;
  const std::vector<GridMeasure>& measures_;
  std::size_t first_measure_;  // among the forms
  Rules guided_;               // with the measures' exact values as the last levels
  int nodes_left_;
  std::vector<Rational> best_;
  std::optional<Cost> best_cost_;  // nothing: no point was found yet
  std::vector<Range> ranges_;
};

}  // namespace

bool operator<(const Cost& a, const Cost& b) {
  if (a.levels != b.levels) return a.levels < b.levels;
  return a.ranks < b.ranks;
}

Cost cost_of(const Rules& rules, const std::vector<GridMeasure>& measures,
             const std::vector<Rational>& values) {
  std::vector<Rational> distances;
  distances.reserve(measures.size());
  for (const GridMeasure& measure : measures) {
    distances.push_back(abs(evaluate(measure.form, values) - measure.exact));
  }
  return {level_costs(rules, values), by_rank(measures, distances)};
}

GridOptimum search_grid(const Rules& rules, const std::vector<GridForm>& forms,
                        const std::vector<GridMeasure>& measures, std::vector<Rational> start,
                        int most_nodes) {
  return GridSearch(rules, forms, measures, std::move(start), most_nodes).run();
}

}  // namespace mullion::solver
