#include "engine/solver/room.h"

#include <algorithm>
#include <map>

namespace mullion::solver {
namespace {

constexpr int most_tries = 100;

struct Bounds {
  std::optional<Rational> least, most;

  // False where nothing is left between them.
  bool add(const Linear& form) {
    const Term& term = form.terms().front();
    const Rational bound = -form.constant() / term.coefficient;
    if (term.coefficient.sign() > 0) {
      if (!least || bound > *least) least = bound;
    } else {
      if (!most || bound < *most) most = bound;
    }
    return !least || !most || *least <= *most;
  }
};

// Inequalities, by their forms.
class Room {
 public:
  explicit Room(std::vector<Linear> forms) : forms_(std::move(forms)) {}

  // What a smaller lattice leaves. Nothing where a form is below zero there, or two forms of one
  // variable exclude each other.
  std::optional<Room> within(const Lattice& lattice) const;

 private:
  std::vector<Linear> forms_;
};

std::optional<Room> Room::within(const Lattice& lattice) const {
  Room out = *this;
  std::map<int, Bounds> bounds;
  for (Linear& form : out.forms_) {
    if (!lattice.space().is_reduced(form)) form = lattice.tightened(form);
    if (form.is_constant() && form.constant().sign() < 0) return std::nullopt;
    if (form.terms().size() != 1) continue;
    if (!bounds[form.terms().front().variable].add(form)) return std::nullopt;
  }
  std::erase_if(out.forms_, [](const Linear& form) { return form.is_constant(); });
  return out;
}

// Zero, or what the grid has nearest to it, and its neighbours; the nearest first. Zero alone where
// the grid leaves no choice.
std::vector<Rational> values_near_zero(const Lattice& lattice, const Linear& form) {
  const auto values = lattice.values_of(form);
  if (!values) return {Rational()};
  std::vector<Rational> out;
  for (int n = -2; n <= 2; ++n) {
    out.push_back(values->at_or_below(0) + Rational(n) * values->spacing);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Rational& a, const Rational& b) { return abs(a) < abs(b); });
  return out;
}

class RoomSearch {
 public:
  RoomSearch(Lattice& lattice, const LevelOptimum::Block& block)
      : lattice_(lattice), block_(block) {}

  // False where nothing was found; the lattice is as it was then.
  bool run(const Room& room) { return run(0, room); }
  bool is_zero() const { return is_zero_; }

 private:
  bool run(std::size_t i, const Room& room) {
    if (i == block_.equations.size()) return true;
    const Linear& equation = block_.equations[i];
    const Lattice::Mark mark = lattice_.mark();
    for (const Rational& value : values_near_zero(lattice_, equation)) {
      const bool was_zero = is_zero_;
      is_zero_ = is_zero_ && value.is_zero();
      const bool is_held = lattice_.hold_at_zero(equation - Linear(value));
      const auto left = is_held ? room.within(lattice_) : std::nullopt;
      if (left && (!(block_.is_independent || is_zero_) || run(i + 1, *left))) return true;
      lattice_.rewind(mark);
      is_zero_ = was_zero;
      if (--tries_left_ < 0) return false;
    }
    return false;
  }

  Lattice& lattice_;
  const LevelOptimum::Block& block_;
  bool is_zero_ = true;
  int tries_left_ = most_tries;
};

}  // namespace

std::optional<bool> hold_leaving_room(Lattice& lattice, const LevelOptimum::Block& block,
                                      const std::vector<Linear>& required) {
  RoomSearch search(lattice, block);
  if (!search.run(Room(required))) return std::nullopt;
  return search.is_zero();
}

}  // namespace mullion::solver
