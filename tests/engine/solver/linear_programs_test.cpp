#include <catch2/catch.hpp>

#include "tests/engine/solver/random_system.h"
#include "tests/oracle/linear_program.h"

using namespace mullion::solver;

TEST_CASE("neither GLPK nor Clp finds a better point at any level of hundreds of random systems") {
  std::mt19937 random(2026);
  int solved = 0;
  for (int i = 0; i < 500; ++i) {
    const System system = test::random_system(random, {8, 3, 8, 9, 3});
    const auto solution = solve(system);
    if (solution) ++solved;
    for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
      REQUIRE(oracle::is_feasible(system, code) == solution.has_value());
      if (solution) CHECK(oracle::better_than(system, *solution, code) == "");
    }
  }
  CHECK(solved > 150);
}

TEST_CASE("neither GLPK nor Clp finds smaller squares for what all levels leave free") {
  std::mt19937 random(2027);
  int solved = 0;
  for (int i = 0; i < 300; ++i) {
    const System system = test::random_system(random, {9, 2, 6, 3, 2});
    const auto solution = solve(system);
    if (!solution) continue;
    ++solved;
    System squares = system;
    for (int v = 0; v < system.variable_count(); ++v) {
      squares.add(prefer(Linear(Variable{v}) == Linear(0), 3));
    }
    for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
      CHECK(oracle::better_than(squares, *solution, code) == "");
    }
  }
  CHECK(solved > 150);
}

TEST_CASE("GLPK and Clp do find a better point where a solution is spoilt") {
  System system;
  const Variable a = system.add_variable(), b = system.add_variable();
  system.add(Linear(a) + Linear(b) == Linear(10));
  system.add(prefer(Linear(a) == Linear(4), 1));
  system.add(prefer(Linear(b) == Linear(4), 1));
  for (const oracle::Code code : {oracle::Code::glpk, oracle::Code::clp}) {
    CHECK(oracle::better_than(system, solve(system).value(), code) == "");
    CHECK(oracle::better_than(system, Solution{{Rational(6), Rational(4)}}, code) != "");
  }
}
