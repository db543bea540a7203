#include <catch2/catch.hpp>

#include "tests/engine/solver/random_system.h"
#include "tests/oracle/linear_program.h"

using namespace mullion::solver;

TEST_CASE("GLPK finds no better point at any level of several hundred random systems") {
  std::mt19937 random(2026);
  int solved = 0;
  for (int i = 0; i < 500; ++i) {
    const System system = test::random_system(random, {8, 3, 8, 9, 3});
    const auto solution = solve(system);
    REQUIRE(oracle::is_feasible(system) == solution.has_value());
    if (!solution) continue;
    ++solved;
    CHECK(oracle::better_than(system, *solution) == "");
  }
  CHECK(solved > 150);
}

TEST_CASE("GLPK does find a better point where a solution is spoilt") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable();
  system.add(Linear(a) + Linear(b) == Linear(10));
  system.add(prefer(Linear(a) == Linear(4), 1));
  system.add(prefer(Linear(b) == Linear(4), 1));
  CHECK(oracle::better_than(system, solve(system).value()) == "");
  CHECK(oracle::better_than(system, Solution{{Rational(6), Rational(4)}}) != "");
}
