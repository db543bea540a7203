// The solver against GLPK, an independent linear-programming code.
//
// Least squares are convex: a feasible point is optimal if and only if no feasible point makes the
// linearised objective smaller there (first-order condition, S. Boyd and L. Vandenberghe, "Convex
// Optimization", 4.2.3). So at every level GLPK minimises the gradient of the level's sum of
// squares at our solution, over the required rules and the violations already fixed above.

#include <glpk.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "tests/engine/solver/random_system.h"

using namespace mullion::solver;

namespace {

double number(const Rational& value) {
  return static_cast<double>(value.numerator()) / static_cast<double>(value.denominator());
}

class LinearProgram {
 public:
  explicit LinearProgram(int variables) : problem_(glp_create_prob()) {
    glp_add_cols(problem_, variables);
    for (int v = 1; v <= variables; ++v) glp_set_col_bnds(problem_, v, GLP_FR, 0, 0);
  }
  LinearProgram(const LinearProgram&) = delete;
  LinearProgram& operator=(const LinearProgram&) = delete;
  ~LinearProgram() { glp_delete_prob(problem_); }

  void add(const Constraint& rule) {
    const int type = rule.relation == Relation::equal      ? GLP_FX
                     : rule.relation == Relation::at_least ? GLP_LO
                                                           : GLP_UP;
    const int row = glp_add_rows(problem_, 1);
    const double bound = -number(rule.form.constant());
    glp_set_row_bnds(problem_, row, type, bound, bound);
    std::vector<int> columns{0};
    std::vector<double> values{0};
    for (const auto& term : rule.form.terms()) {
      columns.push_back(term.variable + 1);
      values.push_back(number(term.coefficient));
    }
    glp_set_mat_row(problem_, row, static_cast<int>(columns.size()) - 1, columns.data(),
                    values.data());
  }

  struct Answer {
    bool feasible = false;
    bool bounded = false;
    double least = 0;
  };
  Answer minimise(const std::vector<double>& objective) {
    for (std::size_t v = 0; v < objective.size(); ++v) {
      glp_set_obj_coef(problem_, static_cast<int>(v) + 1, objective[v]);
    }
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.meth = GLP_PRIMAL;
    glp_std_basis(problem_);
    REQUIRE(glp_simplex(problem_, &parameters) == 0);
    const int status = glp_get_status(problem_);
    return {status == GLP_OPT || status == GLP_UNBND, status == GLP_OPT, glp_get_obj_val(problem_)};
  }

 private:
  glp_prob* problem_;
};

}  // namespace

TEST_CASE("GLPK finds no better point at any level of several hundred random systems") {
  std::mt19937 random(2026);
  int feasible = 0;
  for (int i = 0; i < 500; ++i) {
    const System system = test::random_system(random, {8, 3, 8, 9, 3});
    const auto solution = solve(system);
    LinearProgram program(system.variable_count());
    std::map<int, std::vector<const Constraint*>> levels;
    for (const Constraint& rule : system.constraints()) {
      if (rule.level == 0) {
        program.add(rule);
      } else {
        levels[rule.level].push_back(&rule);
      }
    }
    const std::size_t count = static_cast<std::size_t>(system.variable_count());
    REQUIRE(program.minimise(std::vector<double>(count)).feasible == solution.has_value());
    if (!solution) continue;
    ++feasible;
    for (const auto& [level, rules] : levels) {
      std::vector<double> gradient(count);
      double here = 0;
      for (const Constraint* rule : rules) {
        const Rational value = solution->value(rule->form);
        const Rational violated = violation(*rule, value).is_zero() ? Rational() : value;
        const double slope = number(rule->weight) * number(violated);
        for (const auto& term : rule->form.terms()) {
          const auto v = static_cast<std::size_t>(term.variable);
          gradient[v] += slope * number(term.coefficient);
          here += slope * number(term.coefficient) * number(solution->values[v]);
        }
      }
      const auto answer = program.minimise(gradient);
      REQUIRE(answer.bounded);
      CHECK(answer.least == Approx(here).margin(1e-6));
      for (const Constraint* rule : rules) {
        const Rational value = solution->value(rule->form);
        if (rule->relation == Relation::equal || !violation(*rule, value).is_zero()) {
          program.add({rule->form - Linear(value), Relation::equal});
        } else {
          program.add(*rule);
        }
      }
    }
  }
  CHECK(feasible > 150);
}
