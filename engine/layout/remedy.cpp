#include "engine/layout/remedy.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>

#include "engine/solver/partition.h"

namespace mullion::layout {
namespace {

using solver::Linear;
using solver::Rational;

constexpr std::size_t most_ways = 4;

// A narrower border or gap is no advice, but where the job states one already. Our own figure.
constexpr Length narrowest = sixty_fourths(16);

// The rules for which `is_wanted(rule, number)`, over the same variables.
template <class Predicate>
RequiredRules chosen(const solver::System& system, const std::vector<int>& numbers,
                     const Predicate& is_wanted) {
  RequiredRules out;
  for (int v = 0; v < system.variable_count(); ++v) out.system.add_variable();
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const solver::Constraint& rule = system.constraints()[i];
    if (!is_wanted(rule, numbers[i])) continue;
    out.system.add(rule);
    out.numbers.push_back(numbers[i]);
  }
  return out;
}

// Statements whose numbers change together.
struct Together {
  std::vector<int> tags;
  const Statement* first;

  bool contains(int tag) const { return std::find(tags.begin(), tags.end(), tag) != tags.end(); }
};

// By kind: the outer size is the first that a framer thinks of.
int place_of(const Statement& statement) {
  if (is_outer(statement)) return 0;
  if (statement.kind == Statement::Kind::border) return 1;
  return statement.kind == Statement::Kind::gap ? 2 : 3;
}

std::vector<Together> changed_together(const Model& model, const std::vector<int>& tags) {
  std::vector<Together> units;
  for (const int tag : tags) {
    const Statement& statement = model.statements[static_cast<std::size_t>(tag)];
    if (!statement.adjustable) continue;
    const bool has_likes =
        statement.kind == Statement::Kind::border || statement.kind == Statement::Kind::gap;
    const auto like = std::find_if(units.begin(), units.end(), [&](const Together& unit) {
      return has_likes && unit.first->kind == statement.kind &&
             unit.first->value == statement.value;
    });
    if (like != units.end()) {
      like->tags.push_back(tag);
    } else {
      units.push_back({{tag}, &statement});
    }
  }
  std::stable_sort(units.begin(), units.end(), [](const Together& a, const Together& b) {
    return place_of(*a.first) < place_of(*b.first);
  });
  return units;
}

// The rules where the unit's number is a variable of its own, the last of the system.
solver::System with_free_number(const RequiredRules& rules, const Together& unit) {
  solver::System trial;
  for (int v = 0; v < rules.system.variable_count(); ++v) trial.add_variable();
  const Linear number(trial.add_variable());
  const Linear stated(unit.first->value.ticks());
  for (solver::Constraint rule : rules.system.constraints()) {
    if (rule.tag > 0 && unit.contains(rule.tag)) rule.form += stated - number;
    trial.add(std::move(rule));
  }
  return trial;
}

Length least_number(const Job& job, const Together& unit) {
  const Statement& statement = *unit.first;
  if (is_rule(statement)) return job.scale.increment;
  const Length least = std::min(narrowest, statement.value);
  const bool is_gap = statement.kind == Statement::Kind::gap;
  return is_gap && job.least_bar ? std::max(*job.least_bar, least) : least;
}

// The number nearest to the stated one with which the rules hold.
std::optional<Length> nearest_number(const Job& job, const RequiredRules& rules,
                                     const Together& unit) {
  solver::System trial = with_free_number(rules, unit);
  const solver::Variable variable{trial.variable_count() - 1};
  const Rational step(job.scale.increment.ticks()), stated(unit.first->value.ticks());
  trial.add(Linear(variable) >= Linear(least_number(job, unit).ticks()));
  solver::System nearest = trial;
  nearest.add(prefer(Linear(variable) == Linear(stated), 1));
  const auto solution = solver::solve(nearest);
  if (!solution) return std::nullopt;
  const Rational exact = solution->value(Linear(variable));
  // The numbers that fit are an interval; back toward the stated one is out of it.
  const Rational steps = (exact / step).floor();
  const Rational on_step =
      (steps * step == exact || exact < stated ? steps : steps + Rational(1)) * step;
  trial.add(Linear(variable) == Linear(on_step));
  if (solver::solve(trial)) return Length::from_ticks(on_step.to_int64());
  if (!exact.is_integer()) return std::nullopt;
  return Length::from_ticks(exact.to_int64());
}

bool is_only_gap(const Model& model, const RequiredRules& rules, const Together& unit) {
  const auto& all = rules.system.constraints();
  return std::all_of(all.begin(), all.end(), [&](const solver::Constraint& rule) {
    if (rule.tag <= 0) return true;
    const Statement& other = model.statements[static_cast<std::size_t>(rule.tag)];
    return other.kind != Statement::Kind::gap || unit.contains(rule.tag);
  });
}

bool hold_without(const RequiredRules& rules, int tag) {
  const auto others =
      chosen(rules.system, rules.numbers, [&](const auto& rule, int) { return rule.tag != tag; });
  return solver::solve(others.system).has_value();
}

}  // namespace

RequiredRules required_rules(const Model& model) {
  std::vector<int> numbers(model.system.constraints().size());
  std::iota(numbers.begin(), numbers.end(), 0);
  return chosen(model.system, numbers,
                [](const auto& rule, int) { return rule.level == level::required; });
}

RequiredRules parts_of(const solver::Conflict& conflict, const RequiredRules& rules) {
  std::set<int> parts;
  for (const auto& part : conflict.parts) parts.insert(part.constraint);
  return chosen(rules.system, rules.numbers,
                [&](const auto&, int number) { return parts.contains(number); });
}

RequiredRules linked_to(const solver::Conflict& conflict, const RequiredRules& rules) {
  solver::Partition partition(rules.system.variable_count());
  for (const solver::Constraint& rule : rules.system.constraints()) partition.join(rule.form);
  std::set<int> touched;
  const RequiredRules parts = parts_of(conflict, rules);
  for (const solver::Constraint& rule : parts.system.constraints()) {
    if (!rule.form.is_constant()) touched.insert(partition.part_of(rule.form));
  }
  return chosen(rules.system, rules.numbers, [&](const auto& rule, int) {
    return rule.form.is_constant() || touched.contains(partition.part_of(rule.form));
  });
}

RequiredRules without_statements_of(const solver::Conflict& conflict, const RequiredRules& linked,
                                    const RequiredRules& rules) {
  std::set<int> tags;
  const RequiredRules parts = parts_of(conflict, rules);
  for (const solver::Constraint& rule : parts.system.constraints()) {
    if (rule.tag > 0) tags.insert(rule.tag);
  }
  const std::set<int> near(linked.numbers.begin(), linked.numbers.end());
  return chosen(rules.system, rules.numbers, [&](const auto& rule, int number) {
    return !tags.contains(rule.tag) || !near.contains(number);
  });
}

solver::Conflict renumbered(solver::Conflict conflict, const RequiredRules& rules) {
  for (auto& part : conflict.parts) {
    part.constraint = rules.numbers[static_cast<std::size_t>(part.constraint)];
  }
  return conflict;
}

std::vector<Remedy> ways_out(const Job& job, const Model& model, const RequiredRules& rules,
                             const std::vector<int>& tags) {
  std::vector<Remedy> ways;
  for (const Together& unit : changed_together(model, tags)) {
    if (ways.size() == most_ways) return ways;
    const auto number = nearest_number(job, rules, unit);
    if (!number) continue;
    const bool is_gap = unit.first->kind == Statement::Kind::gap;
    ways.push_back({unit.tags, number, is_gap && !is_only_gap(model, rules, unit)});
  }
  if (!ways.empty()) return ways;
  for (const int tag : tags) {
    const Statement& statement = model.statements[static_cast<std::size_t>(tag)];
    if (!is_rule(statement) || ways.size() == most_ways) continue;
    if (hold_without(rules, tag)) ways.push_back({{tag}, std::nullopt, false});
  }
  return ways;
}

}  // namespace mullion::layout
