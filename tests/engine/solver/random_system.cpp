#include "tests/engine/solver/random_system.h"

#include <algorithm>

namespace test {

using namespace mullion::solver;

Linear random_form(std::mt19937& random, int variables) {
  std::uniform_int_distribution<int> variable(0, variables - 1), coefficient(-2, 2),
      constant(-20, 20), count(1, 3);
  Linear form(constant(random));
  for (int n = count(random); n >= 0; --n) {
    form += Linear(Variable{variable(random)}) * Rational(coefficient(random));
  }
  return form;
}

System random_system(std::mt19937& random, const Shape& shape) {
  System system;
  for (int i = 0; i < shape.variables; ++i) system.add_variable();
  std::uniform_int_distribution<int> level(1, shape.levels), relation(0, 3), weight(1, 3);
  for (int i = 0; i < shape.equations; ++i) {
    system.add(random_form(random, shape.variables) == Linear(0));
  }
  for (int i = 0; i < shape.inequalities; ++i) {
    const Linear form = random_form(random, shape.variables);
    system.add(i % 2 == 0 ? form >= Linear(0) : form <= Linear(0));
  }
  for (int i = 0; i < shape.preferences; ++i) {
    const Linear form = random_form(random, shape.variables);
    const int kind = relation(random);
    Constraint rule = kind == 0   ? form >= Linear(0)
                      : kind == 1 ? form <= Linear(0)
                                  : form == Linear(0);
    system.add(prefer(std::move(rule), level(random), weight(random)));
  }
  return system;
}

System shuffled(const System& system, std::mt19937& random) {
  std::vector<Constraint> rules = system.constraints();
  std::shuffle(rules.begin(), rules.end(), random);
  System out;
  for (int i = 0; i < system.variable_count(); ++i) out.add_variable();
  for (Constraint& rule : rules) out.add(std::move(rule));
  return out;
}

}  // namespace test
