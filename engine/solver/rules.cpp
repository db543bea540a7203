#include "engine/solver/rules.h"

#include "engine/solver/partition.h"

namespace mullion::solver {
namespace {

void take(Rules& rules, const Constraint& constraint, Linear form, int number) {
  if (constraint.relation == Relation::equal) {
    if (constraint.level > 0) {
      rules.levels[constraint.level].push_back({std::move(form), constraint.weight});
    } else {
      rules.equations.push_back(std::move(form));
      rules.equation_constraints.push_back(number);
    }
    return;
  }
  if (constraint.relation == Relation::at_most) form *= -1;
  if (constraint.level > 0) rules.levels[constraint.level];
  rules.inequalities.push_back({std::move(form), constraint.level, constraint.weight, number});
}

}  // namespace

Linear Components::localise(const Linear& form) const {
  Terms terms;
  for (const Term& term : form.terms()) {
    // Numbers rise in the order of the system's variables, so the terms stay sorted.
    terms.push_back({number_in_part[at(term.variable)], term.coefficient});
  }
  return {std::move(terms), form.constant()};
}

int Components::part_of_form(const Linear& form) const {
  return part_of[at(form.terms().front().variable)];
}

Components split(const System& system, const std::vector<Linear>& links) {
  Partition partition(system.variable_count());
  for (const Constraint& constraint : system.constraints()) partition.join(constraint.form);
  for (const Linear& form : links) partition.join(form);

  Components out;
  std::vector<int> part_of_root(at(system.variable_count()), -1);
  for (int v = 0; v < system.variable_count(); ++v) {
    int& part = part_of_root[at(partition.part_of(v))];
    if (part < 0) {
      part = static_cast<int>(out.parts.size());
      out.parts.emplace_back();
    }
    out.part_of.push_back(part);
    out.number_in_part.push_back(out.parts[at(part)].variable_count());
    out.parts[at(part)].variables.push_back(v);
  }
  int number = -1;
  for (const Constraint& constraint : system.constraints()) {
    ++number;
    if (!constraint.form.is_constant()) {
      take(out.parts[at(out.part_of_form(constraint.form))], constraint,
           out.localise(constraint.form), number);
    } else if (constraint.level == 0 &&
               !violation(constraint, constraint.form.constant()).is_zero()) {
      out.broken_constants.push_back(number);
    }
  }
  return out;
}

}  // namespace mullion::solver
