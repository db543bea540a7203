#include "engine/solver/snap.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "engine/solver/hierarchy.h"

namespace mullion::solver {
namespace {

bool on_lattice(const Rational& value, const Rational& step) {
  return (value / step).is_integer();
}

// Holds each form at a multiple of the step, where it is not yet determined: the nearest to its
// present value.
void hold_nearest(Hierarchy& hierarchy, const Solution& present, const std::vector<Linear>& forms,
                  const Rational& step) {
  for (const Linear& form : forms) {
    if (hierarchy.reduce(form).is_constant()) continue;
    hierarchy.hold(form - Linear(nearest_multiple(present.value(form), step)));
  }
}

// As above one by one: where the nearest multiple leaves no solution the other neighbour is taken,
// and where neither does the form stays off the lattice.
Solution hold_one_by_one(Hierarchy& hierarchy, Solution present, const std::vector<Linear>& forms,
                         const Rational& step) {
  for (const Linear& form : forms) {
    if (hierarchy.reduce(form).is_constant()) continue;
    const Rational value = present.value(form);
    const Rational nearest = nearest_multiple(value, step);
    const Rational other = nearest < value ? nearest + step : nearest - step;
    for (const Rational& multiple : {nearest, other}) {
      Hierarchy trial = hierarchy;
      trial.hold(form - Linear(multiple));
      auto solution = trial.solve();
      if (!solution) continue;
      hierarchy = std::move(trial);
      present = std::move(*solution);
      break;
    }
  }
  return present;
}

std::map<int, std::vector<Linear>> by_rank(const std::vector<Measure>& measures) {
  std::map<int, std::vector<Linear>> out;
  for (const Measure& measure : measures) out[measure.rank].push_back(measure.form);
  return out;
}

}  // namespace

tl::expected<Snapped, Conflict> snap(const System& system, const Solution& exact,
                                     const std::vector<Measure>& measures, const Rational& step) {
  if (step.sign() <= 0) throw std::invalid_argument("a step must be positive");
  Hierarchy hierarchy(system);
  Solution present = exact;
  for (const auto& [rank, forms] : by_rank(measures)) {
    const bool settled = std::all_of(forms.begin(), forms.end(), [&](const Linear& form) {
      return on_lattice(present.value(form), step);
    });
    if (settled) {
      hold_nearest(hierarchy, present, forms, step);
      continue;
    }
    Hierarchy together = hierarchy;
    hold_nearest(together, present, forms, step);
    if (auto solution = together.solve()) {
      hierarchy = std::move(together);
      present = std::move(*solution);
    } else {
      present = hold_one_by_one(hierarchy, std::move(present), forms, step);
    }
  }
  Snapped out;
  for (const Measure& measure : measures) {
    out.moved.push_back(present.value(measure.form) - exact.value(measure.form));
  }
  out.values = std::move(present.values);
  return out;
}

}  // namespace mullion::solver
