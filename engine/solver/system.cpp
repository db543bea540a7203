#include "engine/solver/system.h"

#include <stdexcept>

namespace mullion::solver {

Constraint operator==(Linear left, const Linear& right) {
  return {std::move(left -= right), Relation::equal};
}

Constraint operator>=(Linear left, const Linear& right) {
  return {std::move(left -= right), Relation::at_least};
}

Constraint operator<=(Linear left, const Linear& right) {
  return {std::move(left -= right), Relation::at_most};
}

Constraint prefer(Constraint constraint, int level, Rational weight) {
  constraint.level = level;
  constraint.weight = std::move(weight);
  return constraint;
}

Constraint tagged(Constraint constraint, int tag) {
  constraint.tag = tag;
  return constraint;
}

Rational violation(const Constraint& constraint, const Rational& value) {
  switch (constraint.relation) {
    case Relation::at_least:
      return value.sign() < 0 ? -value : Rational();
    case Relation::at_most:
      return value.sign() > 0 ? value : Rational();
    case Relation::equal:
      break;
  }
  return value;
}

Variable System::add_variable() {
  return Variable{variable_count_++};
}

int System::add(Constraint constraint) {
  for (const Term& term : constraint.form.terms()) {
    if (term.variable < 0 || term.variable >= variable_count_) {
      throw std::invalid_argument("a constraint names a variable of another system");
    }
  }
  if (constraint.level < 0) throw std::invalid_argument("a constraint has a negative level");
  if (constraint.weight.sign() <= 0) throw std::invalid_argument("a weight must be positive");
  constraints_.push_back(std::move(constraint));
  return static_cast<int>(constraints_.size()) - 1;
}

}  // namespace mullion::solver
