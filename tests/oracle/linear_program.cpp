#include "tests/oracle/linear_program.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <coin/ClpSimplex.hpp>
#include <map>
#include <memory>
#include <stdexcept>
#include <vector>

namespace oracle {
namespace {

using namespace mullion::solver;

double number(const Rational& value) {
  return static_cast<double>(value.numerator()) / static_cast<double>(value.denominator());
}

enum class Status { optimal, unbounded, infeasible };

// Over free variables.
class LinearProgram {
 public:
  virtual ~LinearProgram() = default;
  virtual void add(const Constraint& rule) = 0;
  virtual Variable add_at_least_zero() = 0;  // a variable that is not free
  // From the basis of the last call, if there was one.
  virtual Status minimise(const std::vector<double>& objective) = 0;
  virtual void forget_basis() = 0;
  virtual double least() const = 0;
};

class Glpk : public LinearProgram {
 public:
  explicit Glpk(int variables) : problem_(glp_create_prob()) {
    glp_add_cols(problem_, variables);
    for (int v = 1; v <= variables; ++v) glp_set_col_bnds(problem_, v, GLP_FR, 0, 0);
  }
  Glpk(const Glpk&) = delete;
  Glpk& operator=(const Glpk&) = delete;
  ~Glpk() override { glp_delete_prob(problem_); }

  void add(const Constraint& rule) override {
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

  Variable add_at_least_zero() override {
    const int column = glp_add_cols(problem_, 1);
    glp_set_col_bnds(problem_, column, GLP_LO, 0, 0);
    return Variable{column - 1};
  }

  void forget_basis() override { glp_std_basis(problem_); }

  Status minimise(const std::vector<double>& objective) override {
    for (std::size_t v = 0; v < objective.size(); ++v) {
      glp_set_obj_coef(problem_, static_cast<int>(v) + 1, objective[v]);
    }
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    if (glp_simplex(problem_, &parameters) != 0) throw std::runtime_error("GLPK gave up");
    switch (glp_get_status(problem_)) {
      case GLP_OPT:
        return Status::optimal;
      case GLP_UNBND:
        return Status::unbounded;
      default:
        return Status::infeasible;
    }
  }
  double least() const override { return glp_get_obj_val(problem_); }

 private:
  glp_prob* problem_;
};

class Clp : public LinearProgram {
 public:
  explicit Clp(int variables) {
    problem_.setLogLevel(0);
    problem_.resize(0, variables);
    for (int v = 0; v < variables; ++v) {
      problem_.setColumnBounds(v, -COIN_DBL_MAX, COIN_DBL_MAX);
    }
  }

  void add(const Constraint& rule) override {
    std::vector<int> columns;
    std::vector<double> values;
    for (const auto& term : rule.form.terms()) {
      columns.push_back(term.variable);
      values.push_back(number(term.coefficient));
    }
    const double bound = -number(rule.form.constant());
    problem_.addRow(static_cast<int>(columns.size()), columns.data(), values.data(),
                    rule.relation == Relation::at_most ? -COIN_DBL_MAX : bound,
                    rule.relation == Relation::at_least ? COIN_DBL_MAX : bound);
  }

  Variable add_at_least_zero() override {
    problem_.addColumn(0, nullptr, nullptr, 0, COIN_DBL_MAX);
    return Variable{problem_.numberColumns() - 1};
  }

  void forget_basis() override { problem_.allSlackBasis(true); }

  Status minimise(const std::vector<double>& objective) override {
    for (std::size_t v = 0; v < objective.size(); ++v) {
      problem_.setObjectiveCoefficient(static_cast<int>(v), objective[v]);
    }
    problem_.primal();
    switch (problem_.status()) {
      case 0:
        return Status::optimal;
      case 1:
        return Status::infeasible;
      case 2:
        return Status::unbounded;
      default:
        throw std::runtime_error("Clp gave up");
    }
  }
  double least() const override { return problem_.objectiveValue(); }

 private:
  ClpSimplex problem_;
};

std::unique_ptr<LinearProgram> make_program(Code code, int variables) {
  if (code == Code::clp) return std::make_unique<Clp>(variables);
  return std::make_unique<Glpk>(variables);
}

// The violation that the level's sum of squares sees: signed for an equality.
Rational residual(const Constraint& rule, const Solution& solution) {
  const Rational value = solution.value(rule.form);
  return violation(rule, value).is_zero() ? Rational() : value;
}

struct Linearised {
  std::vector<double> gradient;
  double here = 0;
  double size = 1;  // for judging a difference
};

Linearised linearise(const std::vector<const Constraint*>& rules, const Solution& solution) {
  Linearised out;
  out.gradient.resize(solution.values.size());
  for (const Constraint* rule : rules) {
    const double slope = number(rule->weight) * number(residual(*rule, solution));
    for (const auto& term : rule->form.terms()) {
      const auto v = static_cast<std::size_t>(term.variable);
      const double part = slope * number(term.coefficient);
      out.gradient[v] += part;
      out.here += part * number(solution.values[v]);
      out.size = std::max(out.size, std::abs(part * number(solution.values[v])));
    }
  }
  return out;
}

}  // namespace

bool is_feasible(const System& system, Code code) {
  const auto program = make_program(code, system.variable_count());
  for (const Constraint& rule : system.constraints()) {
    if (rule.level == 0) program->add(rule);
  }
  const std::vector<double> nothing(static_cast<std::size_t>(system.variable_count()));
  return program->minimise(nothing) != Status::infeasible;
}

std::string better_than(const System& system, const Solution& solution, Code code) {
  const auto program = make_program(code, system.variable_count());
  std::map<int, std::vector<const Constraint*>> levels;
  for (const Constraint& rule : system.constraints()) {
    if (rule.level == 0) {
      program->add(rule);
    } else {
      levels[rule.level].push_back(&rule);
    }
  }
  for (const auto& [level, rules] : levels) {
    const Linearised objective = linearise(rules, solution);
    program->forget_basis();
    const auto status = program->minimise(objective.gradient);
    const std::string where = "level " + std::to_string(level) + ": ";
    if (status != Status::optimal) return where + "no optimum";
    if (std::abs(program->least() - objective.here) > 1e-7 * objective.size) {
      return where + std::to_string(program->least()) + " is less than " +
             std::to_string(objective.here);
    }
    for (const Constraint* rule : rules) {
      const Rational value = solution.value(rule->form);
      if (rule->relation == Relation::equal || !residual(*rule, solution).is_zero()) {
        program->add({rule->form - Linear(value), Relation::equal});
      } else {
        program->add(*rule);
      }
    }
  }
  return {};
}

bool minimise_all_levels(const System& system, Code code) {
  const auto program = make_program(code, system.variable_count());
  struct Wish {
    Variable missed;
    Rational weight;
  };
  std::map<int, std::vector<Wish>> levels;
  for (const Constraint& rule : system.constraints()) {
    if (rule.level == 0) {
      program->add(rule);
      continue;
    }
    Constraint softened = rule;
    const auto give = [&](int sign) {
      const Variable missed = program->add_at_least_zero();
      softened.form.add(Linear(missed), sign);
      levels[rule.level].push_back({missed, rule.weight});
    };
    if (rule.relation != Relation::at_least) give(-1);
    if (rule.relation != Relation::at_most) give(1);
    program->add(softened);
  }
  std::size_t columns = static_cast<std::size_t>(system.variable_count());
  for (const auto& [level, wishes] : levels) columns += wishes.size();
  for (const auto& [level, wishes] : levels) {
    std::vector<double> objective(columns);
    Linear sum;
    for (const Wish& wish : wishes) {
      objective[static_cast<std::size_t>(wish.missed.index)] = number(wish.weight);
      sum.add(Linear(wish.missed), wish.weight);
    }
    if (program->minimise(objective) != Status::optimal) return false;
    const double slack = 1e-6 * std::max(1.0, program->least());
    program->add(sum <= Linear(static_cast<std::int64_t>(std::ceil(program->least() + slack))));
  }
  return true;
}

}  // namespace oracle
