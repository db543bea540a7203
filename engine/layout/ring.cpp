#include "engine/layout/ring.h"

#include <algorithm>

#include "engine/solver/rational.h"

namespace mullion::layout {
namespace {

using solver::Rational;

constexpr int fine_bits = 30, bits = 24;
constexpr std::int64_t fine = std::int64_t{1} << fine_bits;
constexpr std::int64_t quarter_turn = 1'686'629'713;  // pi / 2 of them
constexpr std::int64_t half_root = 11'863'283;        // the root of 1/2, of whole_radius

struct Wave {
  std::int64_t sine = 0, cosine = 0;
};

// Of an eighth of a turn at most, by their power series.
Wave wave_of(std::int64_t angle) {
  const std::int64_t square = angle * angle / fine;
  Wave out{angle, fine};
  std::int64_t odd = angle, even = fine;
  for (std::int64_t n = 1; n <= 6; ++n) {
    even = -(even * square / fine) / ((2 * n - 1) * 2 * n);
    odd = -(odd * square / fine) / (2 * n * (2 * n + 1));
    out.cosine += even;
    out.sine += odd;
  }
  constexpr std::int64_t coarse = std::int64_t{1} << (fine_bits - bits);
  const auto rounded = [](std::int64_t value) { return (value + coarse / 2) / coarse; };
  return {rounded(out.sine), rounded(out.cosine)};
}

// Of `part` of `count` parts of a quarter turn.
Wave in_quarter(std::int64_t part, std::int64_t count) {
  if (part == 0) return {0, whole_radius};
  if (2 * part == count) return {half_root, half_root};
  if (2 * part < count) return wave_of(quarter_turn * part / count);
  const Wave other = in_quarter(count - part, count);
  return {other.cosine, other.sine};
}

// One axis of a ring, in halves of a tick.
class AxisPlaces {
 public:
  AxisPlaces(Length side, Length increment) : side_(side), step_(2 * increment.ticks()) {}

  // On the right or lower half, to the part's middle.
  Rational middle(std::int64_t on_unit_circle) const {
    return Rational(side_.ticks()) * Rational(on_unit_circle, whole_radius);
  }

  bool is_odd(Length size) const { return (2 * size.ticks() / step_) % 2 != 0; }

  // So that parts of odd width in the middle line begin on a step.
  void set_off_by_half() { offset_ = step_ / 2; }

  std::int64_t edge(std::int64_t on_unit_circle, const std::optional<Length>& size) const {
    if (!size) return rounded(middle(on_unit_circle), 0);
    if (on_unit_circle < 0) return -(edge(-on_unit_circle, size) + 2 * size->ticks());
    if (on_unit_circle == 0 && 2 * size->ticks() % step_ != 0) return -size->ticks();
    const Rational exact = middle(on_unit_circle) - Rational(size->ticks());
    if (on_unit_circle == 0) return floored(exact, offset_);
    return rounded(exact, offset_);
  }

 private:
  std::int64_t floored(const Rational& halves, std::int64_t offset) const {
    const Rational steps = (halves - Rational(offset)) / Rational(step_);
    return steps.floor().to_int64() * step_ + offset;
  }
  std::int64_t rounded(const Rational& halves, std::int64_t offset) const {
    return floored(halves + Rational(step_, 2), offset);
  }

  Length side_;
  std::int64_t step_, offset_ = 0;
};

// The ring's places for one width and height.
std::vector<std::array<std::int64_t, 2>> placed(const Group& group,
                                                const std::vector<PartSize>& sizes, Length across,
                                                Length down, Length increment) {
  const auto count = std::count_if(group.children.begin(), group.children.end(),
                                   [](const Node& child) { return !child.is_centre; });
  std::vector<OnCircle> turns;
  std::int64_t number = 0;
  for (const Node& child : group.children) {
    if (child.is_centre) {
      turns.push_back({});
      continue;
    }
    turns.push_back(group.ring.first_on_top ? on_circle(number, count)
                                            : on_circle(2 * number + 1, 2 * count));
    ++number;
  }
  std::vector<std::array<std::int64_t, 2>> out(sizes.size());
  for (const std::size_t axis : {std::size_t{0}, std::size_t{1}}) {
    AxisPlaces places(axis == 0 ? across : down, increment);
    const auto turn = [&](std::size_t i) { return axis == 0 ? turns[i].right : turns[i].down; };
    int odd = 0, even = 0;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      if (turn(i) != 0 || !sizes[i][axis]) continue;
      ++(places.is_odd(*sizes[i][axis]) ? odd : even);
    }
    if (odd > even) places.set_off_by_half();
    for (std::size_t i = 0; i < sizes.size(); ++i)
      out[i][axis] = places.edge(turn(i), sizes[i][axis]);
  }
  return out;
}

bool are_apart(const std::vector<std::array<std::int64_t, 2>>& parts,
               const std::vector<PartSize>& sizes, Length gap) {
  const auto apart = [&](std::size_t i, std::size_t j, std::size_t axis) {
    const auto end = [&](std::size_t part) {
      return parts[part][axis] + 2 * sizes[part][axis].value_or(Length()).ticks();
    };
    const std::int64_t between = std::max(parts[j][axis] - end(i), parts[i][axis] - end(j));
    return between >= 2 * gap.ticks();
  };
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!apart(i, j, 0) && !apart(i, j, 1)) return false;
    }
  }
  return true;
}

}  // namespace

OnCircle on_circle(std::int64_t number, std::int64_t count) {
  const std::int64_t quarter = 4 * number / count, part = 4 * number % count;
  const Wave wave = in_quarter(part, count);
  switch (quarter % 4) {
    case 0:
      return {wave.sine, -wave.cosine};
    case 1:
      return {wave.cosine, wave.sine};
    case 2:
      return {-wave.sine, wave.cosine};
    default:
      return {-wave.cosine, -wave.sine};
  }
}

RingPlaces ring_places(const Group& group, const std::vector<PartSize>& sizes, Length increment,
                       Length gap) {
  const auto with = [&](Length across) {
    const Length down = group.ring.down.value_or(across);
    return RingPlaces{across, down, placed(group, sizes, across, down, increment)};
  };
  if (group.ring.across) return with(*group.ring.across);
  // Parts move apart as the ring grows; beyond the sum of all sizes nothing is in the way.
  Length most = gap * 2;
  for (const PartSize& size : sizes) {
    most += std::max(size[0].value_or(Length()), size[1].value_or(Length())) + gap;
  }
  std::int64_t good = 1;
  const auto fits = [&](std::int64_t steps) {
    return are_apart(with(increment * steps).parts, sizes, gap);
  };
  const std::int64_t limit = 8 * (most.ticks() / increment.ticks() + 1);
  while (good < limit && !fits(good)) good *= 2;
  std::int64_t bad = good / 2;
  while (good - bad > 1) {
    const std::int64_t middle = (good + bad) / 2;
    (fits(middle) ? good : bad) = middle;
  }
  return with(increment * good);
}

}  // namespace mullion::layout
