#include "engine/solver/refine.h"

#include <algorithm>

#include "engine/solver/hierarchy.h"
#include "engine/solver/partition.h"

namespace mullion::solver {
namespace {

// A part with more free variables is left as it was rounded. Nodes times rules bound the work.
constexpr int most_free_variables = 8;
constexpr std::size_t most_grid_work = 6000;

struct Part {
  Rules rules;                  // its `variables` are those of the space
  std::vector<GridForm> forms;  // of preferences by rising level, then of measures
  std::vector<GridMeasure> measures;
  bool is_measured = false;

  bool is_small() const { return rules.variable_count() <= most_free_variables; }
  std::size_t size() const {
    std::size_t count = rules.inequalities.size() + measures.size();
    for (const auto& [level, preferences] : rules.levels) count += preferences.size();
    return count;
  }
};

// What the settled levels leave of the rules, over the free variables of the lattice's space; the
// inequalities are not tightened, and `forms` is empty.
Part what_is_left(const Rules& rules, const std::vector<GridMeasure>& measures,
                  const Rounded& rounded) {
  const Elimination& space = rounded.start.space();
  Part left;
  int last_settled = 0;
  std::size_t stage = 0;
  for (const auto& [level, preferences] : rules.levels) {
    if (stage++ < rounded.settled) {
      last_settled = level;
    } else {
      left.rules.levels[level] = reduced(space, preferences);
    }
  }
  for (std::size_t i = 0; i < rules.inequalities.size(); ++i) {
    if (std::find(rounded.missed.begin(), rounded.missed.end(), i) != rounded.missed.end())
      continue;
    const Inequality& inequality = rules.inequalities[i];
    Linear form = space.reduce(inequality.form);
    if (form.is_constant()) continue;
    const int level = inequality.level > last_settled ? inequality.level : 0;
    left.rules.inequalities.push_back({std::move(form), level, inequality.weight, -1});
  }
  for (const GridMeasure& measure : measures) {
    Linear form = space.reduce(measure.form);
    if (!form.is_constant())
      left.measures.push_back({std::move(form), measure.exact, measure.rank});
  }
  return left;
}

// The parts that share no variable, complete where they are small enough to be searched.
class Splitter {
 public:
  Splitter(const Part& whole, const Lattice& lattice)
      : lattice_(lattice),
        partition_(lattice.space().variable_count()),
        part_of_root_(at(lattice.space().variable_count()), -1),
        number_(at(lattice.space().variable_count()), -1) {
    for (const auto& [level, preferences] : whole.rules.levels) {
      for (const Preference& wish : preferences) partition_.join(wish.form);
    }
    for (const Inequality& inequality : whole.rules.inequalities) partition_.join(inequality.form);
    for (const GridMeasure& measure : whole.measures) partition_.join(measure.form);
    const Elimination& space = lattice.space();
    for (int v = 0; v < space.variable_count(); ++v) {
      if (space.is_pivot(v)) continue;
      int& part = part_of_root_[at(partition_.part_of(v))];
      if (part < 0) {
        part = static_cast<int>(parts_.size());
        parts_.emplace_back();
      }
      number_[at(v)] = parts_[at(part)].rules.variable_count();
      parts_[at(part)].rules.variables.push_back(v);
    }
    distribute(whole);
  }

  std::vector<Part> take() { return std::move(parts_); }

 private:
  void distribute(const Part& whole) {
    for (const auto& [level, preferences] : whole.rules.levels) {
      for (const Preference& wish : preferences) {
        Part& part = part_of(wish.form);
        if (!part.is_small()) continue;
        part.rules.levels[level].push_back({local(wish.form), wish.weight});
        if (const auto values = lattice_.values_of(wish.form)) {
          part.forms.push_back({local(wish.form), *values});
        }
      }
    }
    for (const Inequality& inequality : whole.rules.inequalities) {
      Part& part = part_of(inequality.form);
      if (!part.is_small()) continue;
      if (inequality.level > 0) part.rules.levels[inequality.level];
      const Linear form =
          inequality.level > 0 ? inequality.form : lattice_.tightened(inequality.form);
      part.rules.inequalities.push_back({local(form), inequality.level, inequality.weight, -1});
    }
    for (const GridMeasure& measure : whole.measures) {
      Part& part = part_of(measure.form);
      part.is_measured = true;
      if (!part.is_small()) continue;
      part.forms.push_back({local(measure.form), *lattice_.values_of(measure.form)});
      part.measures.push_back({local(measure.form), measure.exact, measure.rank});
    }
  }

  Part& part_of(const Linear& form) {
    return parts_[at(part_of_root_[at(partition_.part_of(form))])];
  }

  Linear local(const Linear& form) const {
    Terms terms;
    for (const Term& term : form.terms()) {
      terms.push_back({number_[at(term.variable)], term.coefficient});
    }
    return {std::move(terms), form.constant()};
  }

  const Lattice& lattice_;
  Partition partition_;
  std::vector<int> part_of_root_;
  std::vector<int> number_;
  std::vector<Part> parts_;
};

// The rules' optimum where the measures have the values they have at `values`.
std::vector<Rational> completed(const Rules& rules, const std::vector<GridMeasure>& measures,
                                const Rounded& rounded, const std::vector<Rational>& values) {
  Elimination space = rounded.start.space();
  std::vector<Linear> held;
  held.reserve(measures.size());
  for (const GridMeasure& measure : measures) {
    held.push_back(measure.form - Linear(evaluate(measure.form, values)));
  }
  if (!space.add(std::move(held))) return values;
  auto optimum = optimise(std::move(space), rules, rounded.working);
  if (!optimum) return values;
  return std::move(optimum->values);
}

}  // namespace

GridOptimum refine(const Rules& rules, const std::vector<GridMeasure>& measures,
                   const Rounded& rounded) {
  const Elimination& space = rounded.start.space();
  const bool has_start = !rounded.values.empty();
  std::vector<Rational> values = rounded.values;
  values.resize(at(space.variable_count()));
  bool proved = true, changed = false;
  for (const Part& part : Splitter(what_is_left(rules, measures, rounded), rounded.start).take()) {
    if (!part.is_measured) continue;
    if (!part.is_small()) {
      if (!has_start) return {};
      proved = false;
      continue;
    }
    std::vector<Rational> start;
    for (const int v : part.rules.variables) start.push_back(values[at(v)]);
    const GridOptimum optimum = search_grid(part.rules, part.forms, part.measures,
                                            has_start ? start : std::vector<Rational>(),
                                            static_cast<int>(most_grid_work / part.size()));
    if (optimum.values.empty()) return {{}, optimum.proved};
    proved = proved && optimum.proved;
    changed = changed || optimum.values != start;
    for (std::size_t v = 0; v < start.size(); ++v) {
      values[at(part.rules.variables[v])] = optimum.values[v];
    }
  }
  if (has_start && !changed) return {rounded.values, proved};
  space.back_substitute(values);
  return {completed(rules, measures, rounded, values), proved};
}

}  // namespace mullion::solver
