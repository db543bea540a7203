#include "engine/solver/snap.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <stdexcept>

#include "engine/solver/content.h"
#include "engine/solver/positions.h"
#include "engine/solver/refine.h"

namespace mullion::solver {
namespace {

std::vector<std::vector<Preference>> wishes_by_rank(const std::vector<GridMeasure>& measures) {
  std::map<int, std::vector<Preference>> ranks;
  for (const GridMeasure& measure : measures) {
    ranks[measure.rank].push_back({measure.form - Linear(measure.exact), 1});
  }
  std::vector<std::vector<Preference>> out;
  out.reserve(ranks.size());
  for (auto& [rank, wishes] : ranks) out.push_back(std::move(wishes));
  return out;
}

// Measures in the way that are let off one by one, where there are no more to look through; else
// whole ranks are.
constexpr int most_let_off = 8;
constexpr std::size_t most_looked_through = 300;

// `measures` by rising rank; not all are on the grid at the exact solution.
class ComponentSnapper {
 public:
  ComponentSnapper(const Rules& rules, std::vector<Rational> exact,
                   std::vector<GridMeasure> measures, const Rational& step)
      : rules_(rules), exact_(std::move(exact)), measures_(std::move(measures)), step_(step) {}

  GridOptimum run() const {
    if (measures_.size() > most_looked_through) {
      GridOptimum optimum = snapped_to(measures_, Effort::one_method);
      if (!optimum.values.empty()) return optimum;
      if (auto values = round_positions(rules_, exact_, measures_, step_)) {
        return {std::move(*values), false};
      }
    }
    std::vector<GridMeasure> measures = measures_;
    bool proved = true;
    std::size_t possible = 0;  // so many of the first leave a point on the grid
    for (int let_off = 0; !measures.empty(); ++let_off) {
      GridOptimum optimum = snapped_to(measures);
      proved = proved && optimum.proved;
      if (!optimum.values.empty()) return {std::move(optimum.values), proved};
      if (let_off < most_let_off && measures.size() <= most_looked_through) {
        possible = most_possible(measures, possible);
        measures.erase(measures.begin() + static_cast<std::ptrdiff_t>(possible));
      } else {
        const int highest = measures.back().rank;
        while (!measures.empty() && measures.back().rank == highest) measures.pop_back();
      }
    }
    return {{}, proved};
  }

 private:
  // Of measures that leave no point on the grid, how many of the first leave one; at least
  // `possible`.
  std::size_t most_possible(const std::vector<GridMeasure>& measures, std::size_t possible) const {
    std::size_t impossible = measures.size();
    while (possible + 1 < impossible) {
      const std::size_t middle = possible + (impossible - possible) / 2;
      const auto end = measures.begin() + static_cast<std::ptrdiff_t>(middle);
      const bool leaves_a_point = !snapped_to({measures.begin(), end}).values.empty();
      (leaves_a_point ? possible : impossible) = middle;
    }
    return possible;
  }

  // Without values where no point on the grid was found.
  GridOptimum snapped_to(const std::vector<GridMeasure>& measures,
                         Effort effort = Effort::whole) const {
    Elimination space(rules_.variable_count());
    space.add(rules_.equations);
    Lattice lattice(std::move(space), step_);
    std::vector<GridMeasure> on_grid;
    for (const GridMeasure& measure : measures) {
      if (lattice.put_on_grid(measure.form)) on_grid.push_back(measure);
    }
    if (on_grid.empty()) return {{}, true};
    const auto rounded = round_to_grid(lattice, rules_, exact_, wishes_by_rank(on_grid), effort);
    return refine(rules_, on_grid, rounded ? *rounded : Rounded{{}, 0, lattice, {}, {}});
  }

  const Rules& rules_;
  std::vector<Rational> exact_;
  std::vector<GridMeasure> measures_;
  Rational step_;
};

// Numbers of measures that depend on something, by part of the system and then by rising rank.
std::vector<std::vector<std::size_t>> measures_by_part(const Components& components,
                                                       const std::vector<Measure>& measures) {
  std::vector<std::size_t> order(measures.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return measures[a].rank < measures[b].rank;
  });
  std::vector<std::vector<std::size_t>> out(components.parts.size());
  for (const std::size_t i : order) {
    const Linear& form = measures[i].form;
    if (form.is_constant()) continue;
    out[static_cast<std::size_t>(components.part_of_form(form))].push_back(i);
  }
  return out;
}

bool required_rules_hold(const System& system, const Solution& solution) {
  const auto& rules = system.constraints();
  return std::all_of(rules.begin(), rules.end(), [&](const Constraint& rule) {
    return rule.level > 0 || violation(rule, solution.value(rule.form)).is_zero();
  });
}

}  // namespace

tl::expected<Snapped, Conflict> snap(const System& system, const Solution& exact,
                                     const std::vector<Measure>& measures, const Rational& step) {
  if (step.sign() <= 0) throw std::invalid_argument("a step must be positive");
  if (!required_rules_hold(system, exact)) {
    const auto solution = solve(system);
    if (!solution) return tl::unexpected(solution.error());
    throw std::invalid_argument("not the solution of this system");
  }
  std::vector<Linear> forms;
  forms.reserve(measures.size());
  for (const Measure& measure : measures) forms.push_back(measure.form);
  const Components components = split(in_order_of_content(system), forms);
  const auto of_part = measures_by_part(components, measures);

  Snapped out{exact.values, {}, true};
  for (std::size_t p = 0; p < components.parts.size(); ++p) {
    const Rules& rules = components.parts[p];
    std::vector<GridMeasure> local;
    bool settled = true;
    for (const std::size_t i : of_part[p]) {
      local.push_back({components.localise(forms[i]), exact.value(forms[i]), measures[i].rank});
      settled = settled && (local.back().exact / step).is_integer();
    }
    if (settled) continue;
    std::vector<Rational> values;
    for (const int v : rules.variables) values.push_back(exact.values[static_cast<std::size_t>(v)]);
    const GridOptimum optimum =
        ComponentSnapper(rules, std::move(values), std::move(local), step).run();
    out.proved = out.proved && optimum.proved;
    if (optimum.values.empty()) continue;
    for (std::size_t v = 0; v < rules.variables.size(); ++v) {
      out.values[static_cast<std::size_t>(rules.variables[v])] = optimum.values[v];
    }
  }
  for (const Linear& form : forms) {
    out.moved.push_back(evaluate(form, out.values) - exact.value(form));
  }
  return out;
}

}  // namespace mullion::solver
