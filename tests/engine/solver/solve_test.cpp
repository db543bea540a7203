#include "engine/solver/solve.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "tests/engine/solver/random_system.h"

using namespace mullion::solver;

namespace {

Rational at(const Solution& solution, Variable v) {
  return solution.values[static_cast<std::size_t>(v.index)];
}

// The rules of a conflict, each with its multiplier.
std::multiset<std::string> texts_of(const System& system, const Conflict& conflict) {
  std::multiset<std::string> out;
  for (const auto& part : conflict.parts) {
    const Constraint& rule = system.constraints()[static_cast<std::size_t>(part.constraint)];
    std::string text = part.multiplier.to_string() + ":" + rule.form.constant().to_string();
    for (const auto& term : rule.form.terms()) {
      text += " " + term.coefficient.to_string() + "*" + std::to_string(term.variable);
    }
    out.insert(std::move(text));
  }
  return out;
}

}  // namespace

// The midpoint of a line on a screen: x_l + 10 <= x_r <= 100, x_l >= 0, 2 x_m = x_l + x_r; moving
// the midpoint moves the ends. After the introductory example of G. J. Badros, A. Borning and P. J.
// Stuckey, "The Cassowary Linear Arithmetic Constraint Solving Algorithm", ACM TOCHI 8(4), 2001
// (figures from memory).
TEST_CASE("a midpoint stays between its ends and the ends stay on the screen") {
  System system;
  const Variable left = system.add_variable(), middle = system.add_variable(),
                 right = system.add_variable();
  system.add(Linear(middle) * 2 == Linear(left) + Linear(right));
  system.add(Linear(left) + 10 <= Linear(right));
  system.add(Linear(right) <= Linear(100));
  system.add(Linear(left) >= Linear(0));
  SECTION("the middle follows the mouse as far as it can") {
    system.add(prefer(Linear(middle) == Linear(200), 1));
    const Solution solution = solve(system).value();
    CHECK(at(solution, middle) == 95);
    CHECK(at(solution, left) == 90);
    CHECK(at(solution, right) == 100);
  }
  SECTION("a strong wish wins over a weak one") {
    system.add(prefer(Linear(left) == Linear(30), 1));
    system.add(prefer(Linear(right) == Linear(20), 2));
    const Solution solution = solve(system).value();
    CHECK(at(solution, left) == 30);
    CHECK(at(solution, right) == 40);
    CHECK(at(solution, middle) == 35);
  }
}

TEST_CASE("two equal wishes that cannot both hold give up the same amount") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable();
  system.add(Linear(a) + Linear(b) == Linear(10));
  system.add(prefer(Linear(a) == Linear(4), 1));
  system.add(prefer(Linear(b) == Linear(4), 1));
  const Solution solution = solve(system).value();
  CHECK(at(solution, a) == 5);
  CHECK(at(solution, b) == 5);
}

TEST_CASE("a weight of two halves what a wish gives up") {
  System system;
  const Variable a = system.add_variable();
  system.add(prefer(Linear(a) == Linear(0), 1, 2));
  system.add(prefer(Linear(a) == Linear(9), 1));
  CHECK(at(solve(system).value(), a) == 3);
}

TEST_CASE("a wish of at least gives way only by what is missing") {
  System system;
  const Variable a = system.add_variable();
  system.add(Linear(a) <= Linear(7));
  system.add(prefer(Linear(a) >= Linear(9), 1));
  system.add(prefer(Linear(a) == Linear(3), 2));
  CHECK(at(solve(system).value(), a) == 7);
  System free;
  const Variable b = free.add_variable();
  free.add(prefer(Linear(b) >= Linear(9), 1));
  free.add(prefer(Linear(b) == Linear(30), 2));
  CHECK(at(solve(free).value(), b) == 30);
}

TEST_CASE("what no rule decides is as small as it can be") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable(), c = system.add_variable();
  system.add(Linear(a) + Linear(b) == Linear(6));
  system.add(Linear(c) >= Linear(2));
  const Solution solution = solve(system).value();
  CHECK(at(solution, a) == 3);
  CHECK(at(solution, b) == 3);
  CHECK(at(solution, c) == 2);
}

TEST_CASE("borders, openings and a gap that do not fit the outer width add up to the shortfall") {
  System system;
  const Variable outer = system.add_variable(), border = system.add_variable(),
                 gap = system.add_variable();
  const int sum = system.add(Linear(border) * 2 + 19 + Linear(gap) == Linear(outer));
  const int three = system.add(Linear(border) == Linear(3));
  const int one = system.add(Linear(gap) == Linear(1));
  system.add(Linear(gap) >= Linear(0));
  const int given = system.add(Linear(outer) == Linear(24));
  const auto result = solve(system);
  REQUIRE_FALSE(result);
  const Conflict& conflict = result.error();
  CHECK(conflict.shortfall == 2);
  REQUIRE(conflict.parts.size() == 4);
  CHECK(conflict.parts[0].constraint == sum);
  CHECK(conflict.parts[1].constraint == three);
  CHECK(abs(conflict.parts[1].multiplier) == 2);
  CHECK(conflict.parts[2].constraint == one);
  CHECK(conflict.parts[3].constraint == given);
}

TEST_CASE("inequalities that exclude each other are told with the equations that link them") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable();
  system.add(Linear(a) >= Linear(5));
  system.add(Linear(b) <= Linear(3));
  system.add(Linear(a) == Linear(b) + 1);
  system.add(Linear(a) <= Linear(50));
  const auto result = solve(system);
  REQUIRE_FALSE(result);
  CHECK(result.error().parts.size() == 3);
  CHECK(result.error().shortfall == 1);
}

TEST_CASE("the order of the rules does not change the solution") {
  std::mt19937 random(7);
  int solved = 0;
  for (int i = 0; i < 400; ++i) {
    const System system = test::random_system(random, {});
    const auto first = solve(system);
    const auto second = solve(test::shuffled(system, random));
    REQUIRE(first.has_value() == second.has_value());
    if (!first) continue;
    ++solved;
    CHECK(first->values == second->values);
  }
  CHECK(solved > 100);
}

TEST_CASE("a hint at what may matter changes neither the solution nor the conflict") {
  std::mt19937 random(23);
  for (int i = 0; i < 400; ++i) {
    const System system = test::random_system(random, {6, 2, 8, 6, 3});
    std::vector<int> hint;
    for (int number = 0; number < 20; ++number) {
      if (std::bernoulli_distribution()(random)) hint.push_back(number);
    }
    const auto plain = solve(system), hinted = solve(system, hint);
    REQUIRE(plain.has_value() == hinted.has_value());
    if (plain) {
      CHECK(plain->values == hinted->values);
      CHECK(solve(system, plain->looked_at)->values == plain->values);
    } else {
      CHECK(texts_of(system, plain.error()) == texts_of(system, hinted.error()));
    }
  }
}

TEST_CASE("the order of the rules does not change the conflict") {
  std::mt19937 random(19);
  int conflicts = 0;
  for (int i = 0; i < 400; ++i) {
    const System system = test::random_system(random, {5, 3, 8, 2, 1});
    const System other = test::shuffled(system, random);
    const auto first = solve(system), second = solve(other);
    REQUIRE(first.has_value() == second.has_value());
    if (first) continue;
    ++conflicts;
    CHECK(first.error().shortfall == second.error().shortfall);
    CHECK(texts_of(system, first.error()) == texts_of(other, second.error()));
  }
  CHECK(conflicts > 100);
}

TEST_CASE("a conflict is a smallest one and its amounts add up") {
  std::mt19937 random(11);
  int conflicts = 0;
  for (int i = 0; i < 600; ++i) {
    const System system = test::random_system(random, {5, 3, 8, 0, 1});
    const auto result = solve(system);
    if (result) continue;
    ++conflicts;
    const Conflict& conflict = result.error();
    CHECK(conflict.shortfall.sign() > 0);
    Linear sum;
    for (const auto& part : conflict.parts) {
      const Constraint& rule = system.constraints()[static_cast<std::size_t>(part.constraint)];
      CHECK((rule.relation == Relation::equal ||
             (rule.relation == Relation::at_least) == (part.multiplier.sign() > 0)));
      sum.add(rule.form, part.multiplier);
    }
    CHECK(sum.is_constant());
    CHECK(sum.constant() == -conflict.shortfall);
    for (const auto& left_out : conflict.parts) {
      System rest;
      for (int v = 0; v < system.variable_count(); ++v) rest.add_variable();
      for (const auto& part : conflict.parts) {
        if (part.constraint != left_out.constraint) {
          rest.add(system.constraints()[static_cast<std::size_t>(part.constraint)]);
        }
      }
      CHECK(solve(rest).has_value());
    }
  }
  CHECK(conflicts > 100);
}

TEST_CASE("scaling all numbers scales the solution, negating them mirrors it") {
  std::mt19937 random(13);
  for (int i = 0; i < 200; ++i) {
    const System system = test::random_system(random, {});
    const auto plain = solve(system);
    for (const Rational& factor : {Rational(3), Rational(-1)}) {
      System changed;
      for (int v = 0; v < system.variable_count(); ++v) changed.add_variable();
      for (Constraint rule : system.constraints()) {
        rule.form = Linear(rule.form.terms(), rule.form.constant() * factor);
        if (factor.sign() < 0) {
          rule.relation = rule.relation == Relation::at_least  ? Relation::at_most
                          : rule.relation == Relation::at_most ? Relation::at_least
                                                               : Relation::equal;
        }
        changed.add(std::move(rule));
      }
      const auto result = solve(changed);
      REQUIRE(result.has_value() == plain.has_value());
      if (!plain) continue;
      for (std::size_t v = 0; v < plain->values.size(); ++v) {
        CHECK(result->values[v] == plain->values[v] * factor);
      }
    }
  }
}
