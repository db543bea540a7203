#include "engine/solver/snap.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <map>
#include <optional>
#include <stdexcept>

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

TEST_CASE("measures on the grid already stay where they are") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable();
  system.add(Linear(a) + b == 12);
  system.add(prefer(Linear(a) == b, 1));
  const Solution exact = solve(system).value();
  const Snapped snapped = snap(system, exact, {{Linear(a), 0}, {Linear(b), 1}}, 3).value();
  CHECK(snapped.values == exact.values);
  CHECK(snapped.proved);
}

TEST_CASE("equal gaps stay equal and the borders take the remainder") {
  // Four openings of 10 and three gaps between two borders, 67 in all, by whole numbers.
  System system;
  const Variable near = system.add_variable(), far = system.add_variable();
  std::vector<Variable> gaps;
  Linear sum = Linear(near) + far + 40;
  for (int i = 0; i < 3; ++i) {
    gaps.push_back(system.add_variable());
    sum += Linear(gaps.back());
  }
  system.add(sum == 67);
  for (const Variable gap : gaps) system.add(prefer(Linear(gap) == gaps.front(), 1));
  system.add(prefer(Linear(near) == far, 2));
  system.add(prefer(Linear(gaps.front()) == near, 3));
  std::vector<Measure> measures{{Linear(near), 1}, {Linear(far), 2}};
  for (const Variable gap : gaps) measures.push_back({Linear(gap), 0});
  const Solution exact = solve(system).value();
  CHECK(exact.value(Linear(near)) == Rational(27, 5));
  const Snapped snapped = snap(system, exact, measures, 1).value();
  CHECK(snapped.proved);
  CHECK(evaluate(Linear(near), snapped.values) == 6);
  CHECK(evaluate(Linear(far), snapped.values) == 6);
  for (const Variable gap : gaps) CHECK(evaluate(Linear(gap), snapped.values) == 5);
}

TEST_CASE("a remainder that cannot be shared goes to the measure of the highest rank") {
  System system;
  const Variable top = system.add_variable(), bottom = system.add_variable();
  system.add(Linear(top) + bottom == 7);
  system.add(prefer(Linear(top) == bottom, 1));
  const Solution exact = solve(system).value();
  const Snapped snapped = snap(system, exact, {{Linear(top), 0}, {Linear(bottom), 1}}, 2).value();
  // 7 is no multiple of 2: the bottom is let off.
  CHECK(evaluate(Linear(top), snapped.values) == 4);
  CHECK(evaluate(Linear(bottom), snapped.values) == 3);
}

TEST_CASE("a limit is not broken for the sake of the grid") {
  System system;
  const Variable gap = system.add_variable();
  system.add(Linear(gap) >= 5);
  system.add(prefer(Linear(gap) == 0, 1));
  const Solution exact = solve(system).value();
  const Snapped snapped = snap(system, exact, {{Linear(gap), 0}}, 4).value();
  CHECK(evaluate(Linear(gap), snapped.values) == 8);
  CHECK(snapped.moved == std::vector<Rational>{3});
  CHECK(snapped.proved);
}

TEST_CASE("where limits leave no room for the grid a measure stays at its exact value") {
  System system;
  const Variable gap = system.add_variable();
  system.add(Linear(gap) >= 5);
  system.add(Linear(gap) <= 7);
  const Solution exact = solve(system).value();
  const Snapped snapped = snap(system, exact, {{Linear(gap), 0}}, 4).value();
  CHECK(evaluate(Linear(gap), snapped.values) == 5);
}

TEST_CASE("variables that are not measured follow the measured ones") {
  System system;
  const Variable whole = system.add_variable(), half = system.add_variable();
  system.add(2 * Linear(half) == whole);
  system.add(prefer(Linear(whole) == Rational(13, 2), 1));
  const Solution exact = solve(system).value();
  const Snapped snapped = snap(system, exact, {{Linear(whole), 0}}, 5).value();
  CHECK(evaluate(Linear(whole), snapped.values) == 5);
  CHECK(evaluate(Linear(half), snapped.values) == Rational(5, 2));
}

TEST_CASE("the order of the rules does not change the snapped values") {
  std::mt19937 random(17);
  int compared = 0;
  for (int i = 0; i < 300; ++i) {
    const System system = test::random_system(random, {7, 2, 5, 8, 3});
    const auto exact = solve(system);
    if (!exact) continue;
    const auto measures = every_variable(system, random);
    const auto first = snap(system, *exact, measures, 3);
    const auto second = snap(test::shuffled(system, random), *exact, measures, 3);
    REQUIRE(first.has_value());
    REQUIRE(second.has_value());
    ++compared;
    CHECK(first->values == second->values);
    CHECK(required_rules_hold(system, first->values));
  }
  CHECK(compared > 100);
}

TEST_CASE("a step must be positive and the solution the system's own") {
  System system;
  const Variable a = system.add_variable();
  system.add(Linear(a) == 3);
  const Solution exact = solve(system).value();
  CHECK_THROWS_AS(snap(system, exact, {}, 0), std::invalid_argument);
  CHECK_THROWS_AS(snap(system, Solution{{Rational(4)}}, {}, 1), std::invalid_argument);
}
