#pragma once

// Where the parts of a ring lie, decided before anything is solved.
//
// On the unit circle the places are fractions of 2^24, from power series in whole numbers: the same
// on every machine, exact at the quarters and the twelfths of the circle, and the same but for the
// sign where two places mirror each other. Each part's edge is then rounded once to a whole step
// from the ring's centre. That lies on a step too, or half a step off where the parts in the middle
// line are an odd number of steps wide.

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/job/job.h"

namespace mullion::layout {

// The place after `number` of `count` equal turns from the top, clockwise: how far to the right and
// how far down it lies on a circle of radius 1, in fractions of `whole_radius`.
inline constexpr std::int64_t whole_radius = std::int64_t{1} << 24;
struct OnCircle {
  std::int64_t right = 0, down = 0;
};
OnCircle on_circle(std::int64_t number, std::int64_t count);

// A part's width and height, where they are known before the layout.
using PartSize = std::array<std::optional<Length>, 2>;

struct RingPlaces {
  Length across, down;
  // By part, to the right and down, in halves of a tick: from the ring's centre to the part's left
  // and upper edge, or to its middle where its size is not known.
  std::vector<std::array<std::int64_t, 2>> parts;
};

// `group` is a ring, with so many parts. A free ring is the least one, in whole steps, in which all
// parts lie `gap` apart; those of unknown size count as nothing.
RingPlaces ring_places(const Group& group, const std::vector<PartSize>& sizes, Length increment,
                       Length gap);

}  // namespace mullion::layout
