#include "engine/layout/snapping.h"

#include <algorithm>
#include <map>
#include <set>

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
    const bool is_told = rule.level <= level::medium_rule || rule.level == level::weak_rule;
    if (required || !is_told) continue;
    if (!solver::violation(rule, exact.value(rule.form)).is_zero()) continue;
    const Rational now = solver::violation(rule, snapped.value(rule.form));
    if (!now.is_zero()) out.push_back({&rule, now});
  }
  return out;
}

// What a preference is called where it could not be met.
Statement named(const Model& model, const solver::Constraint& rule) {
  if (rule.tag > 0) return statement_of(model, rule);
  Statement out;
  out.kind =
      rule.level == level::equal_parts ? Statement::Kind::equal_gaps : Statement::Kind::alignments;
  return out;
}

// Each once; where more parts than a few are out of line, the others together.
std::vector<LayoutNote> notes_on_broken(const Model& model, const std::vector<Broken>& broken,
                                        Unit unit) {
  constexpr std::size_t most_out_of_line = 6;
  std::vector<LayoutNote> notes, others;
  std::vector<OffBy> told;
  std::size_t out_of_line = 0;
  Length most;
  for (const auto& [rule, exact_amount] : broken) {
    const Statement what = named(model, *rule);
    const OffBy fresh{what, Length::from_ticks(abs(exact_amount).floor().to_int64())};
    const auto reads_alike = [&](const OffBy& earlier) {
      return earlier.what == fresh.what &&
             to_finest_mark(earlier.amount, unit) == to_finest_mark(fresh.amount, unit);
    };
    if (std::any_of(told.begin(), told.end(), reads_alike)) continue;
    told.push_back(fresh);
    if (what.kind != Statement::Kind::alignment || ++out_of_line <= most_out_of_line) {
      notes.emplace_back(fresh);
    } else {
      others.emplace_back(fresh);
      most = std::max(most, fresh.amount);
    }
  }
  if (others.size() == 1) notes.push_back(std::move(others.front()));
  if (others.size() > 1) notes.emplace_back(OutOfLine{others.size(), most});
  return notes;
}

// Openings of free size that were alike: by how much the largest exceeds the smallest. Preferences
// of one axis are each a size less their mean, a variable of their own.
std::vector<LayoutNote> notes_on_sizes(const Model& model, const solver::Solution& exact,
                                       const Values& snapped) {
  struct Spread {
    Rational least, most;
    bool was_equal = true;
  };
  std::map<int, Spread> by_mean;
  for (const solver::Constraint& rule : model.system.constraints()) {
    if (rule.level != level::free_sizes) continue;
    const Rational now = snapped.value(rule.form);
    const auto [spread, is_new] =
        by_mean.try_emplace((rule.form.terms().end() - 1)->variable, Spread{now, now});
    spread->second.least = std::min(spread->second.least, now);
    spread->second.most = std::max(spread->second.most, now);
    spread->second.was_equal = spread->second.was_equal && exact.value(rule.form).is_zero();
  }
  std::vector<LayoutNote> notes;
  for (const auto& [mean, spread] : by_mean) {
    if (!spread.was_equal || spread.least == spread.most) continue;
    Statement what;
    what.kind = Statement::Kind::equal_sizes;
    what.axis = model.free_size_axis.at(mean);
    notes.emplace_back(
        OffBy{what, Length::from_ticks((spread.most - spread.least).floor().to_int64())});
  }
  return notes;
}

std::vector<LayoutNote> notes_off_step(const Model& model, const Values& snapped,
                                       const Rational& step) {
  std::vector<LayoutNote> notes;
  const auto check = [&](Statement::Kind kind, Axis axis, bool far, const Linear& form) {
    const Rational value = snapped.value(form);
    if (is_multiple(value, step)) return;
    Statement what;
    what.kind = kind;
    what.axis = axis;
    what.far = far;
    notes.emplace_back(OffStep{what, Length::from_ticks(value.floor().to_int64())});
  };
  for (const Axis axis : {across, down}) {
    check(Statement::Kind::outer, axis, false, model.outer[axis]);
  }
  for (const Axis axis : {across, down}) {
    check(Statement::Kind::border, axis, false, model.border[axis].start);
    check(Statement::Kind::border, axis, true, model.border[axis].end);
  }
  for (const Axis axis : {across, down}) {
    EdgesOffStep edges{axis, {}};
    for (const NamedBox& opening : model.openings) {
      const Rational edge = snapped.value(opening.box.span[axis].start);
      if (!is_multiple(edge, step)) edges.openings.push_back(opening.id);
    }
    if (!edges.openings.empty()) notes.emplace_back(std::move(edges));
  }
  return notes;
}

OnIncrement on_increment(const solver::Snapped& snapped) {
  const bool moved = std::any_of(snapped.moved.begin(), snapped.moved.end(),
                                 [](const Rational& by) { return !by.is_zero(); });
  return !moved           ? OnIncrement::as_it_was
         : snapped.proved ? OnIncrement::nearest
                          : OnIncrement::near;
}

}  // namespace

Snapping snap_to_increment(const Job& job, const Model& model, const solver::Solution& exact) {
  const Rational step(job.scale.increment.ticks());
  Snapping out;
  const solver::System system = Yielding(model, exact, step).system();
  solver::Snapped snapped = solver::snap(system, exact, model.measures, step).value();
  out.on_increment = on_increment(snapped);
  out.values.by_variable = std::move(snapped.values);
  const std::vector<Linear> edges = edges_of(model);
  if (!all_whole(edges, out.values)) {
    out.values = to_whole_ticks(system, model, out.values, step, edges);
  }
  out.notes = notes_on_broken(model, broken_by_snapping(model, exact, out.values), job.scale.unit);
  for (LayoutNote& note : notes_on_sizes(model, exact, out.values)) {
    out.notes.push_back(std::move(note));
  }
  for (LayoutNote& note : notes_off_step(model, out.values, step)) {
    out.notes.push_back(std::move(note));
  }
  return out;
}

}  // namespace mullion::layout
