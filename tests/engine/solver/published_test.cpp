// Cases of linear-constraint layout from the literature, written down from memory:
// G. J. Badros, A. Borning, P. J. Stuckey, "The Cassowary Linear Arithmetic Constraint Solving
// Algorithm", ACM Transactions on Computer-Human Interaction 8(4), 2001; A. Borning, B.
// Freeman-Benson, M. Wilson, "Constraint Hierarchies", Lisp and Symbolic Computation 5, 1992.

#include <catch2/catch.hpp>

#include "engine/solver/solve.h"

using namespace mullion::solver;

namespace {

constexpr int strong = 1, medium = 2, weak = 3;

Rational at(const Solution& solution, Variable v) {
  return solution.values[static_cast<std::size_t>(v.index)];
}

}  // namespace

// TOCHI 2001, the running example of a line's midpoint: x_m is the middle of x_l and x_r, x_l is at
// least 10 to the left of x_r, all lie between 0 and 100 (from memory).
TEST_CASE("published: the ends of a line follow its midpoint until the window's edge") {
  for (const int mouse : {-20, 30, 50, 97, 150}) {
    System system;
    const Variable left = system.add_variable(), middle = system.add_variable(),
                   right = system.add_variable();
    system.add(2 * Linear(middle) == Linear(left) + right);
    system.add(Linear(left) + 10 <= right);
    system.add(Linear(left) >= 0);
    system.add(Linear(right) <= 100);
    system.add(prefer(Linear(middle) == mouse, strong));
    system.add(prefer(Linear(left) == 30, weak));
    system.add(prefer(Linear(right) == 60, weak));
    const Solution solution = solve(system).value();
    const int expected = mouse < 5 ? 5 : mouse > 95 ? 95 : mouse;
    CHECK(at(solution, middle) == expected);
    CHECK(at(solution, left) + at(solution, right) == 2 * expected);
  }
}

// Lisp and Symbolic Computation 1992, the thermometer: a strong constraint to follow the mouse, a
// weak one to stay, and a required range (from memory).
TEST_CASE("published: the mercury follows the mouse within the scale") {
  System system;
  const Variable mercury = system.add_variable();
  system.add(Linear(mercury) >= 0);
  system.add(Linear(mercury) <= 100);
  system.add(prefer(Linear(mercury) == 120, strong));
  system.add(prefer(Linear(mercury) == 40, weak));
  CHECK(at(solve(system).value(), mercury) == 100);
}

// The same, Celsius and Fahrenheit: 1.8 C = F - 32 is required, both have weak stays, and one is
// edited (from memory).
TEST_CASE("published: Fahrenheit follows Celsius") {
  System system;
  const Variable celsius = system.add_variable(), fahrenheit = system.add_variable();
  system.add(Linear(celsius) * Rational(9, 5) == Linear(fahrenheit) - 32);
  system.add(prefer(Linear(celsius) == 0, weak));
  system.add(prefer(Linear(fahrenheit) == 32, weak));
  system.add(prefer(Linear(celsius) == 37, medium));
  CHECK(at(solve(system).value(), fahrenheit) == Rational(493, 5));
}

// Lisp and Symbolic Computation 1992: comparators differ where constraints of one level conflict.
// Two constraints x = 0 and x = 10 of equal weight: least squares takes the mean, 5, where
// locally better solutions are any of 0 to 10 (from memory).
TEST_CASE("published: least squares takes the mean of equal wishes") {
  System system;
  const Variable x = system.add_variable();
  system.add(prefer(Linear(x) == 0, weak));
  system.add(prefer(Linear(x) == 10, weak));
  CHECK(at(solve(system).value(), x) == 5);
}

// A strong constraint is not given up for any number of weak ones (the respect-the-hierarchy
// property, 1992).
TEST_CASE("published: no number of weak wishes moves a strong one") {
  System system;
  const Variable x = system.add_variable();
  system.add(prefer(Linear(x) == 1, strong));
  for (int i = 0; i < 1000; ++i) system.add(prefer(Linear(x) == 1000000, weak, 1000));
  CHECK(at(solve(system).value(), x) == 1);
}
