#include "engine/solver/lattice.h"

#include <algorithm>

namespace mullion::solver {
namespace {

Rational nearest_whole(const Rational& value) {
  return nearest_multiple(value, 1);
}

// The largest number of which both are whole multiples. At least one is not zero.
Rational common_measure(Rational a, Rational b) {
  a = abs(a);
  b = abs(b);
  while (!b.is_zero()) a = std::exchange(b, a - (a / b).floor() * b);
  return a;
}

// x with a * x - b a whole multiple of m; all three whole, m > 0, a and m without common divisor.
Rational solve_congruence(const Rational& a, const Rational& b, const Rational& m) {
  Rational r = a - (a / m).floor() * m, s = m, x = 1, y = 0;
  while (!r.is_zero()) {
    const Rational quotient = (s / r).floor();
    s = std::exchange(r, s - quotient * r);
    y = std::exchange(x, y - quotient * x);
  }
  const Rational solution = y * b;
  return solution - nearest_multiple(solution, m);
}

Linear solved_for(const Linear& form, const Term& term) {
  Linear value = form * (Rational(-1) / term.coefficient);
  value.add(Linear(Variable{term.variable}), 1);
  return value;
}

}  // namespace

Lattice::Lattice(Elimination space, Rational step)
    : space_(std::move(space)),
      step_(std::move(step)),
      grid_(static_cast<std::size_t>(space_.variable_count()), false) {}

int Lattice::add_grid_variable() {
  grid_.push_back(true);
  return space_.add_variable();
}

const Term* Lattice::real_term(const Linear& reduced) const {
  for (const Term& term : reduced.terms()) {
    if (!is_grid(term.variable)) return &term;
  }
  return nullptr;
}

// The same form, over grid variables alone, as a multiple of one new grid variable and a constant:
// Euclid's algorithm on the coefficients.
Linear Lattice::gathered(Linear form) {
  while (form.terms().size() > 1) {
    const Term least = *std::min_element(
        form.terms().begin(), form.terms().end(),
        [](const auto& a, const auto& b) { return abs(a.coefficient) < abs(b.coefficient); });
    const Term fresh{add_grid_variable(), least.coefficient};
    Linear value{Variable{fresh.variable}};
    for (const Term& term : form.terms()) {
      if (term.variable == least.variable) continue;
      value.add(Linear(Variable{term.variable}),
                -nearest_whole(term.coefficient / least.coefficient));
    }
    form.add(value - Linear(Variable{least.variable}), least.coefficient);
    space_.substitute(least.variable, std::move(value));
  }
  return form;
}

bool Lattice::put_on_grid(const Linear& form) {
  Linear reduced = space_.reduce(form);
  if (reduced.is_constant()) return is_on_grid(reduced.constant());
  if (const Term* term = real_term(reduced)) {
    Linear rest = reduced;
    rest.add(Linear(Variable{add_grid_variable()}), -1);
    space_.substitute(term->variable, solved_for(rest, *term));
    return true;
  }
  // Whole parts of the coefficients make multiples of the step whatever the variables are.
  Linear remainder(reduced.constant());
  for (const Term& term : reduced.terms()) {
    remainder.add(Linear(Variable{term.variable}),
                  term.coefficient - nearest_whole(term.coefficient));
  }
  if (remainder.is_constant()) return is_on_grid(remainder.constant());
  remainder = gathered(std::move(remainder));
  // a * s + c is to be a multiple of the step, with s a multiple of it.
  const Term& term = remainder.terms().front();
  const Rational constant = remainder.constant() / step_;
  const Rational unit = common_measure(term.coefficient, 1);
  if (!(constant / unit).is_integer()) return false;
  const Rational modulus = Rational(1) / unit;
  const Rational first = solve_congruence(term.coefficient / unit, -constant / unit, modulus);
  space_.substitute(term.variable,
                    Linear(Variable{add_grid_variable()}) * modulus + Linear(first * step_));
  return true;
}

bool Lattice::hold_at_zero(const Linear& form) {
  Linear reduced = space_.reduce(form);
  if (reduced.is_constant()) return reduced.constant().is_zero();
  const Term* term = real_term(reduced);
  if (term == nullptr) {
    reduced = gathered(std::move(reduced));
    term = &reduced.terms().front();
    if (!is_on_grid(reduced.constant() / term->coefficient)) return false;
  }
  space_.substitute(term->variable, solved_for(reduced, *term));
  return true;
}

void Lattice::rewind(const Mark& mark) {
  space_.rewind(mark.pivots, mark.variables);
  grid_.resize(static_cast<std::size_t>(mark.variables));
}

std::vector<Rational> Lattice::values_around_zero(const Linear& form) {
  const Linear reduced = gathered(space_.reduce(form));
  const Rational spacing = abs(reduced.terms().front().coefficient) * step_;
  const Rational above = reduced.constant() - (reduced.constant() / spacing).floor() * spacing;
  const Rational below = above - spacing;
  if (above < -below) return {above, below};
  return {below, above};
}

std::optional<Progression> Lattice::values_of(Linear form) const {
  return values_of_reduced(space_.reduce(std::move(form)));
}

std::optional<Progression> Lattice::values_of_reduced(const Linear& reduced) const {
  if (reduced.is_constant() || real_term(reduced) != nullptr) return std::nullopt;
  Rational unit;
  for (const Term& term : reduced.terms()) unit = common_measure(term.coefficient, unit);
  return Progression{reduced.constant(), unit * step_};
}

Linear Lattice::tightened(Linear form) const {
  Linear reduced = space_.reduce(std::move(form));
  const auto values = values_of_reduced(reduced);
  if (!values) return reduced;
  const Rational lowered = (values->offset / values->spacing).floor() * values->spacing;
  return std::move(reduced) + Linear(lowered - values->offset);
}

}  // namespace mullion::solver
