#include "engine/layout/snapping.h"

#include <algorithm>
#include <set>

#include "engine/layout/words.h"

namespace mullion::layout {
namespace {

using solver::Linear;
using solver::Rational;

std::vector<Linear> edges_of(const Model& model) {
  std::vector<Linear> edges{model.outer[across], model.outer[down]};
  for (const auto* boxes : {&model.openings, &model.groups}) {
    for (const NamedBox& named : *boxes) {
      for (Axis axis : {across, down}) {
        edges.push_back(named.box.span[axis].start);
        edges.push_back(named.box.span[axis].end);
      }
    }
  }
  return edges;
}

const Statement& statement_of(const Model& model, const solver::Constraint& rule) {
  return model.statements[static_cast<std::size_t>(std::max(rule.tag, 0))];
}

// An equation with a factor such as 7/6 holds exactly for few sizes on the rule, which may lie far
// off: these are kept to within half a step. One with halves is met within a step.
bool is_coarse(const solver::Constraint& rule) {
  const auto& terms = rule.form.terms();
  return rule.relation == solver::Relation::equal &&
         std::any_of(terms.begin(), terms.end(), [](const auto& term) {
           return !(term.coefficient * Rational(2)).is_integer();
         });
}

// Required rules that the sizes on the increment may break, by little.
bool may_break(const Model& model, const solver::Constraint& rule) {
  return statement_of(model, rule).gives_way || is_coarse(rule);
}

// Whether the free gaps along an axis are equal in the arrangement.
bool has_equal_gaps(const Model& model, const solver::Solution& exact, Axis axis) {
  std::set<int> along;
  for (const NamedBox& opening : model.openings) {
    for (const Linear* edge : {&opening.box.span[axis].start, &opening.box.span[axis].end}) {
      for (const auto& term : edge->terms()) along.insert(term.variable);
    }
  }
  const auto& rules = model.system.constraints();
  return std::all_of(rules.begin(), rules.end(), [&](const solver::Constraint& rule) {
    const auto& terms = rule.form.terms();
    return rule.level != level::equal_parts ||
           std::none_of(terms.begin(), terms.end(),
                        [&](const auto& term) { return along.contains(term.variable); }) ||
           exact.value(rule.form).is_zero();
  });
}

// The rules as they are on the increment. Those of the borders that may give way do so before gaps
// that are equal: the eye minds a wider border least, and a bottom border least of all. Such a
// rule's form is the far border less what the near one asks of it. Nothing moves far: a rule that
// holds on few sizes must not drive the others to where it does.
class Yielding {
 public:
  Yielding(const Model& model, const solver::Solution& exact, const Rational& step)
      : model_(model), exact_(exact), step_(step) {
    for (const Axis axis : {across, down}) {
      if (!has_equal_gaps(model, exact, axis)) continue;
      for (const auto& term : model.border[axis].start.terms()) {
        near_borders_.insert(term.variable);
      }
    }
  }

  solver::System system() {
    for (int i = 0; i < model_.system.variable_count(); ++i) system_.add_variable();
    for (const solver::Constraint& rule : model_.system.constraints()) add(rule);
    const Rational far = step_ * Rational(static_cast<std::int64_t>(model_.openings.size()) + 4);
    for (const Axis axis : {across, down}) {
      for (const Linear* form : {&model_.border[axis].start, &model_.border[axis].end}) {
        keep_near(*form, far);
      }
    }
    return std::move(system_);
  }

 private:
  void add(solver::Constraint rule) {
    const bool gives_way =
        statement_of(model_, rule).gives_way && exact_.value(rule.form).is_zero();
    const bool yields_first = gives_way && is_of_equal_gaps(rule.form);
    const bool coarse = is_coarse(rule);
    if (rule.level == level::required && (gives_way || coarse)) {
      keep_near(rule.form, room_of(rule.form));
      rule.level = gives_way ? level::symmetry : level::strong_rule;
    }
    if (yields_first) rule.level = level::remainder;
    if (coarse) {
      keep(rule, solver::Relation::at_least, step_ / Rational(2));
      keep(rule, solver::Relation::at_most, -step_ / Rational(2));
      return;
    }
    if (yields_first) keep(rule, solver::Relation::at_least, 0);
    system_.add(std::move(rule));
  }

  // Of a rule of the borders along an axis whose gaps are equal.
  bool is_of_equal_gaps(const Linear& form) const {
    const auto& terms = form.terms();
    return std::any_of(terms.begin(), terms.end(),
                       [&](const auto& term) { return near_borders_.contains(term.variable); });
  }

  void keep(solver::Constraint rule, solver::Relation relation, const Rational& room) {
    rule.form += Linear(room);
    rule.relation = relation;
    system_.add(std::move(rule));
  }

  // How far a form may be off where each of its variables is at the nearest step.
  Rational room_of(const Linear& form) const {
    Rational sum;
    for (const auto& term : form.terms()) sum += abs(term.coefficient);
    return sum * step_ / Rational(2);
  }

  void keep_near(const Linear& form, const Rational& far) {
    const Rational value = exact_.value(form);
    system_.add(form >= Linear(value - far));
    system_.add(form <= Linear(value + far));
  }

  const Model& model_;
  const solver::Solution& exact_;
  Rational step_;
  std::set<int> near_borders_;  // variables, of the axes whose gaps are equal
  solver::System system_;
};

bool all_whole(const std::vector<Linear>& forms, const Values& values) {
  for (const Linear& form : forms) {
    if (!values.value(form).is_integer()) return false;
  }
  return true;
}

bool is_multiple(const Rational& value, const Rational& step) {
  return (value / step).is_integer();
}

// What the increment left between two ticks comes to whole ticks; what it set stays.
Values to_whole_ticks(solver::System system, const Model& model, const Values& snapped,
                      const Rational& step, const std::vector<Linear>& edges) {
  for (const solver::Measure& measure : model.measures) {
    const Rational value = snapped.value(measure.form);
    if (is_multiple(value, step)) system.add(measure.form == Linear(value));
  }
  std::vector<solver::Measure> ticks;
  ticks.reserve(edges.size());
  for (const Linear& edge : edges) ticks.push_back({edge, 0});
  const auto result = solver::snap(system, solver::Solution{snapped.by_variable}, ticks, 1);
  return Values{result.value().values};
}

// A preference that held before the sizes came to the increment and does not hold after.
struct Broken {
  const solver::Constraint* rule;
  Rational amount;
};

std::vector<Broken> broken_by_snapping(const Model& model, const solver::Solution& exact,
                                       const Values& snapped) {
  std::vector<Broken> out;
  for (const solver::Constraint& rule : model.system.constraints()) {
    const bool required = rule.level == level::required && !may_break(model, rule);
    if (required || rule.level > level::medium_rule) continue;
    if (!solver::violation(rule, exact.value(rule.form)).is_zero()) continue;
    const Rational now = solver::violation(rule, snapped.value(rule.form));
    if (!now.is_zero()) out.push_back({&rule, now});
  }
  return out;
}

std::string name_of(const Model& model, const solver::Constraint& rule) {
  if (rule.tag > 0) return statement_of(model, rule).text;
  if (rule.level == level::equal_parts) return "equal gaps";
  return "an alignment within a row or column";
}

struct NamedForm {
  const char* name;
  Linear form;
};

std::vector<NamedForm> outer_and_borders(const Model& model) {
  return {{"the outer width", model.outer[across]},
          {"the outer height", model.outer[down]},
          {"the left border", model.border[across].start},
          {"the right border", model.border[across].end},
          {"the top border", model.border[down].start},
          {"the bottom border", model.border[down].end}};
}

Problem note(const Job& job, std::string message, Place place = {}) {
  return {Severity::note, "layout-moved", std::move(message), place, job.file};
}

// "the left edges of \"a\" and \"b\" lie between two steps of the rule"; empty where none does.
std::string edges_between_steps(const Model& model, Axis axis, const Values& snapped,
                                const Rational& step) {
  constexpr std::size_t most_named = 6;
  std::vector<std::string> names;
  for (const NamedBox& opening : model.openings) {
    const Rational edge = snapped.value(opening.box.span[axis].start);
    if (!is_multiple(edge, step)) names.push_back('"' + opening.id + '"');
  }
  if (names.empty()) return {};
  const std::string edge = axis == across ? "the left edge" : "the top edge";
  if (names.size() == 1) {
    return edge + " of opening " + names.front() + " lies between two steps of the rule";
  }
  const std::string openings = names.size() > most_named
                                   ? std::to_string(names.size()) + " openings"
                                   : "openings " + joined(names);
  return edge + "s of " + openings + " lie between two steps of the rule";
}

Problem broken_note(const Job& job, const std::string& what, Length amount, Place place) {
  return note(job,
              what + ": off by " + fine_text(amount, job.scale.unit) +
                  ", since the sizes do not divide into whole steps of " +
                  format_exact(job.scale.increment, job.scale.unit),
              place);
}

// Each once; where more parts than a few are out of line, the others together.
Problems describe_broken(const Job& job, const Model& model, const std::vector<Broken>& broken) {
  constexpr int most_out_of_line = 6;
  Problems notes, others;
  int out_of_line = 0;
  Length most;
  for (const auto& [rule, exact_amount] : broken) {
    const Statement& statement = statement_of(model, *rule);
    const Length amount = Length::from_ticks(abs(exact_amount).floor().to_int64());
    Problem fresh = broken_note(job, name_of(model, *rule), amount, statement.place);
    const bool is_told = std::any_of(notes.begin(), notes.end(), [&](const Problem& earlier) {
      return earlier.message == fresh.message && earlier.place == fresh.place;
    });
    if (is_told) continue;
    if (statement.kind != Statement::Kind::alignment || ++out_of_line <= most_out_of_line) {
      notes.push_back(std::move(fresh));
    } else {
      others.push_back(std::move(fresh));
      most = std::max(most, amount);
    }
  }
  if (others.size() == 1) notes.push_back(std::move(others.front()));
  if (others.size() > 1) {
    notes.push_back(note(job, "in their rows and columns " + std::to_string(others.size()) +
                                  " more parts are out of line, by " +
                                  fine_text(most, job.scale.unit) + " at most"));
  }
  return notes;
}

Problems describe_moves(const Job& job, const Model& model, const solver::Solution& exact,
                        const Values& snapped) {
  Problems notes = describe_broken(job, model, broken_by_snapping(model, exact, snapped));
  const Rational step(job.scale.increment.ticks());
  for (const auto& [name, form] : outer_and_borders(model)) {
    const Rational value = snapped.value(form);
    if (is_multiple(value, step)) continue;
    const Length length = Length::from_ticks(value.floor().to_int64());
    notes.push_back(note(job, std::string(name) + " is " + fine_text(length, job.scale.unit) +
                                  ", between two steps of the rule"));
  }
  for (const Axis axis : {across, down}) {
    std::string words = edges_between_steps(model, axis, snapped, step);
    if (!words.empty()) notes.push_back(note(job, std::move(words)));
  }
  return notes;
}

}  // namespace

Snapping snap_to_increment(const Job& job, const Model& model, const solver::Solution& exact) {
  const Rational step(job.scale.increment.ticks());
  Snapping out;
  const solver::System system = Yielding(model, exact, step).system();
  out.values.by_variable = solver::snap(system, exact, model.measures, step).value().values;
  const std::vector<Linear> edges = edges_of(model);
  if (!all_whole(edges, out.values)) {
    out.values = to_whole_ticks(system, model, out.values, step, edges);
  }
  out.notes = describe_moves(job, model, exact, out.values);
  return out;
}

}  // namespace mullion::layout
