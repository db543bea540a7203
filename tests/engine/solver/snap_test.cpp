#include "engine/solver/snap.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <map>
#include <optional>

#include "tests/engine/solver/random_system.h"

using namespace mullion::solver;

namespace {

// A point's worth, the better the smaller: violations level by level, then distances rank by rank,
// the largest first. Written from the words of snap.h, not from the solver's code.
using Worth = std::pair<std::map<int, Rational>, std::map<int, std::vector<Rational>>>;

bool required_rules_hold(const System& system, const std::vector<Rational>& values) {
  const auto& rules = system.constraints();
  return std::all_of(rules.begin(), rules.end(), [&](const Constraint& rule) {
    return rule.level > 0 || violation(rule, evaluate(rule.form, values)).is_zero();
  });
}

Worth worth_of(const System& system, const Solution& exact, const std::vector<Measure>& measures,
               const std::vector<Rational>& values) {
  Worth worth;
  for (const Constraint& rule : system.constraints()) {
    if (rule.level == 0) continue;
    const Rational missed = violation(rule, evaluate(rule.form, values));
    worth.first[rule.level] += rule.weight * missed * missed;
  }
  for (const Measure& measure : measures) {
    worth.second[measure.rank].push_back(
        abs(evaluate(measure.form, values) - exact.value(measure.form)));
  }
  for (auto& [rank, distances] : worth.second) {
    std::sort(distances.begin(), distances.end(), std::greater<>());
  }
  return worth;
}

bool all_on_grid(const std::vector<Measure>& measures, const std::vector<Rational>& values,
                 const Rational& step) {
  return std::all_of(measures.begin(), measures.end(), [&](const Measure& measure) {
    return (evaluate(measure.form, values) / step).is_integer();
  });
}

// Calls `visit` for every point whose coordinates are multiples of the step from -reach to reach.
void for_every_point(std::size_t variables, int reach, const Rational& step,
                     const std::function<void(const std::vector<Rational>&)>& visit) {
  std::vector<int> counter(variables, -reach);
  for (;;) {
    std::vector<Rational> point;
    for (const int count : counter) point.push_back(step * Rational(count));
    visit(point);
    std::size_t i = 0;
    while (i < variables && ++counter[i] > reach) counter[i++] = -reach;
    if (i == variables) return;
  }
}

std::vector<Measure> every_variable(const System& system, std::mt19937& random) {
  std::uniform_int_distribution<int> rank(0, 2);
  std::vector<Measure> measures;
  for (int v = 0; v < system.variable_count(); ++v) {
    measures.push_back({Linear(Variable{v}), rank(random)});
  }
  return measures;
}

void keep_within(System& system, const Rational& reach) {
  for (int v = 0; v < system.variable_count(); ++v) {
    system.add(Linear(Variable{v}) <= Linear(reach));
    system.add(Linear(Variable{v}) >= Linear(-reach));
  }
}

}  // namespace

TEST_CASE(
    "no point on the grid is better than the one found, as counting through all of them shows") {
  std::mt19937 random(5);
  const int reach = 5;
  int compared = 0, moved = 0;
  for (int i = 0; i < 500; ++i) {
    System system = test::random_system(random, {3, i % 2, i % 3, 4, 2});
    const Rational step(3 + i % 2);
    keep_within(system, step * Rational(reach));
    const auto exact = solve(system);
    if (!exact) continue;
    const auto measures = every_variable(system, random);
    const auto snapped = snap(system, *exact, measures, step);
    REQUIRE(snapped.has_value());
    REQUIRE(required_rules_hold(system, snapped->values));
    std::optional<Worth> best;
    for_every_point(3, reach, step, [&](const std::vector<Rational>& point) {
      if (!required_rules_hold(system, point)) return;
      Worth worth = worth_of(system, *exact, measures, point);
      if (!best || worth < *best) best = std::move(worth);
    });
    if (!best) continue;
    ++compared;
    if (snapped->values != exact->values) ++moved;
    INFO("system " << i);
    CHECK(all_on_grid(measures, snapped->values, step));
    CHECK(snapped->proved);
    CHECK(worth_of(system, *exact, measures, snapped->values) == *best);
  }
  CHECK(compared > 200);
  CHECK(moved > 150);
}
